// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"
#include "sim/climb.hpp"

namespace sim::sound {

/// What a recorded stroke sounds like: rendered through the body, ends faded; not yet scaled.  Silence of the same
/// length where the run left all sense.
analysis::Signal take_of(const Played& played, const Bridge& bridge);

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

/// All stops in order, played at the strokes that the climb shows but for ClimbTimes::stop seconds each.  One gain for
/// both takes, so that their levels compare; where no bow can stand, silence as long.
ClimbTakes climb_takes(const Climb& climb, const ClimbTimes& times, const Workers& workers);

}  // namespace sim::sound
