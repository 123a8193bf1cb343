// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"
#include "sim/passage/simulated.hpp"

namespace sim::sound {

/// A passage to listen to, twice.
struct PassageTakes {
    analysis::Signal left_behind;  ///< the bow stays
    analysis::Signal follows;      ///< the bow goes its path
};

/// As `passage::simulate`, and its strokes as sound, each where it stands in time, rests silent.  One gain for both
/// takes, so that their levels compare; where no bow can stand, silence.
struct HeardPassage {
    passage::SimulatedPassage played;
    PassageTakes takes;
};
HeardPassage hear_passage(const passage::Passage& whole, const Workers& workers);

}  // namespace sim::sound
