// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace analysis {

/// The value under which `share` (0 … 1) of the values lie, interpolated between neighbours; 0 for none.
double quantile(std::vector<double> values, double share);

/// How far pitches stray, cents: half of what lies between their lowest and highest tenth.
double stray_cents(const std::vector<double>& pitches_hz);

}  // namespace analysis
