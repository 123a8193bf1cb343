// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"
#include "tests/motion/dice.hpp"

#include <array>
#include <cstdint>

namespace tests {

/// What lies between an instrument and a recording of it: walls, the place and make of the microphone.  Invented.
struct Room {
    double decay = 0.4;     ///< s, until the tail is 60 dB down
    double delay = 0.005;   ///< s, until it begins
    double tail_db = -8.0;  ///< its energy over the direct sound's
    double tilt_db = 0.0;   ///< an octave
    /// Broad rises and dips of the response.
    struct Bump {
        double hz = 1000.0;
        double octaves = 0.5;
        double db = 0.0;
    };
    std::array<Bump, 4> bumps{};
    std::uint32_t seed = 1;  ///< of the tail
};

/// Any room from dry to lively.
Room drawn_room(Dice& dice);

/// A sound as it is recorded there, as long as it is.
analysis::Signal in_room(const analysis::Signal& sound, const Room& room);

}  // namespace tests
