// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/fit_points.hpp"

#include <span>
#include <vector>

namespace sim {

/// What modes may be: within it, whatever fits best.  The ends are those of a preset's modes.
struct ModeLimits {
    double hz_low;
    double hz_high;
    double range_low;  ///< Hz, of what was measured
    double range_high;
    double q_low = 0.5;
    double q_high = 5000.0;
    double q_beyond = 20.0;  ///< the most beyond the range: nothing measured tells how long such a mode rings

    bool operator==(const ModeLimits&) const = default;
};

/// The same modes with the masses, none negative, that fit best; modes that then take no part are left out.
/// source   [Lawson1974]: non-negative least squares by an active set (form from memory)
std::vector<BridgeMode> with_best_masses(std::span<const FitPoint> points, std::span<const BridgeMode> modes);

/// How much the misfit grows when each of the modes is left out and the masses of the others follow, their sign aside.
std::vector<double> costs_of_leaving_out(std::span<const FitPoint> points, std::span<const BridgeMode> modes);

/// When polishing ends: after so many steps, or when one gains less than this share of the misfit.
struct PolishEnd {
    int most_steps;
    double settled;
};

/// The modes moved, all at once, to where the misfit is least near them: frequency, Q and mass of each.
/// source   [Marquardt1963]: damped Gauss-Newton steps (form from memory), in the logarithms, so that none turns
/// negative
std::vector<BridgeMode> polished(std::span<const FitPoint> points, std::vector<BridgeMode> modes,
                                 const ModeLimits& limits, const PolishEnd& end);

}  // namespace sim
