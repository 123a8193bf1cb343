// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

namespace analysis {

/// The samples played so that their pitch stays where its median is: vibrato and slides taken out.  Empty where the
/// pitch, looked for within a tone of `hz` (or of any multiple or fraction that repeats alike), is lost.
///
/// The pitch is followed over 0.05 s, or four periods where that is longer; what is faster stays.  Only what lies under
/// 0.4 of the sample rate is kept right.
///
/// least_cents  empty too where the pitch strays by less (stray_cents)
/// threads      any
std::vector<double> steadied(std::span<const double> samples, double sample_rate, double hz, double least_cents = 0.0);

}  // namespace analysis
