// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"
#include "sim/climb.hpp"

namespace sim::sound {

/// What a recorded stroke sounds like: rendered through the body, ends faded; not yet scaled.  Silence of the same
/// length where the run left all sense.
analysis::Signal take_of(const Played& played, const Bridge& bridge);

/// Every stop of a climb alone: rendered, ends faded, not yet scaled; silence as long where no bow can stand.
struct StopTakes {
    std::vector<analysis::Signal> left_behind;  ///< the bow stays
    std::vector<analysis::Signal> follows;      ///< the bow moves with the best contact point
};
/// Played at the strokes that the climb shows but for `seconds` each.
StopTakes stop_takes(const Climb& climb, double seconds, const Workers& workers);

/// A climb to listen to, twice.
struct ClimbTakes {
    analysis::Signal left_behind;  ///< the bow stays
    analysis::Signal follows;      ///< the bow moves with the best contact point
};

/// How long each stop sounds and what lies between, s.
struct ClimbTimes {
    double stop = 0.8;
    double gap = 0.1;
};

/// All stops in order, as stop_takes gives them for ClimbTimes::stop seconds.  One gain for both takes, so that their
/// levels compare.
ClimbTakes climb_takes(const Climb& climb, const ClimbTimes& times, const Workers& workers);

}  // namespace sim::sound
