// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace analysis {

/// Evenly spaced samples of one quantity over time.
struct Signal {
    std::vector<double> samples;  ///< in the quantity's own SI unit, or dimensionless (full scale = 1) for sound
    double sample_rate = 0.0;     ///< Hz, > 0

    bool operator==(const Signal&) const = default;
};

}  // namespace analysis
