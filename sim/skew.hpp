// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/units.hpp"
#include "sim/security.hpp"

#include <vector>

namespace sim {

/// What is asked of a bow that is not parallel to the bridge.
struct SkewPlan {
    /// rad from the parallel, 0 … 0.7
    std::vector<double> angles{0.0,
                               analysis::radians_from_degrees(2.0),
                               analysis::radians_from_degrees(5.0),
                               analysis::radians_from_degrees(10.0),
                               analysis::radians_from_degrees(15.0),
                               analysis::radians_from_degrees(20.0)};
    double stroke_length = 0.4;  ///< m of hair drawn
    MapGrid grid{.contact_points = 32, .player_forces = 12, .more_forces = 0};
};

/// One angle, taken two ways, between which a real hand lies.
///
/// A bow drawn along its own length moves lengthwise over the string with speed * sin(angle).  Either the hair holds on
/// and the contact drifts along the string: then the security is the mean over the way it drifts, the middle of the way
/// at the best place.  Or the hand keeps the place and the hair slides lengthwise: friction then points against both
/// slips together, and nothing sticks quite.  How much of each a hand does is not known here.
struct SkewRow {
    double angle = 0.0;  ///< rad
    double drift = 0.0;  ///< m, along the string over a stroke
    Security drifting;
    Security sliding;
};
struct SkewResult {
    Note note;
    double contact_point = 0.0;  ///< m, best with the bow parallel
    std::vector<SkewRow> rows;   ///< one an angle; none where no stroke speaks
};

/// InputError for friction laws of slip speed, in which lengthwise sliding has no answer here.
SkewResult find_skew(const Note& note, const Player& player, const SkewPlan& plan, const Workers& workers);

}  // namespace sim
