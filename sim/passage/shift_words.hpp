// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/hand.hpp"

#include <string>
#include <vector>

namespace sim::passage {

/// A step of a way at which the hand moves: the notes `first` … `last` are played from its new place.
struct Shift {
    std::size_t first = 0;
    std::size_t last = 0;
};

/// Why the hand moves there, in words: "the next four notes lie above what the hand reaches from fret 5".
std::string shift_words(const score::Tune& tune, const Preset& preset, const Hand& hand,
                        const std::vector<HandState>& states, const Shift& shift);

}  // namespace sim::passage
