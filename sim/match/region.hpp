// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

namespace sim::match {

/// From … to, in the unit of the values.
struct Region {
    double low = 0.0;
    double high = 0.0;

    bool operator==(const Region&) const = default;
};

/// The shortest interval (in ratio) that holds `share` of the weight.
///
/// `values` rise evenly in ratio (three or more); each one's weight is spread evenly, in log, half a step to either
/// side.  Weights >= 0, not all 0; share 0 … 1.  The region ends with the first and last value.
Region shortest_region(std::span<const double> values, std::span<const double> weights, double share);

/// Weights of values that rise evenly in ratio, each spread as above, as weights of other such values; what lies beyond
/// these is lost.
std::vector<double> moved_weights(std::span<const double> values, std::span<const double> weights,
                                  std::span<const double> onto);

}  // namespace sim::match
