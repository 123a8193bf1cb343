// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"

#include <span>

namespace analysis {

/// The same sound at another rate (ratio of the rates within 1/256 … 256), by the best band-limited interpolation of
/// the library.  Single precision inside.  Length: samples × ratio, rounded.
///
/// threads  pure
Signal resample(const Signal& signal, double to_rate);

}  // namespace analysis
