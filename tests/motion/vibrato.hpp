// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"

namespace tests {

/// A finger that rolls on the string.
struct Vibrato {
    double cents = 0.0;  ///< by which the pitch strays either way
    double hz = 5.5;
    double turn = 0.0;  ///< where it begins, 0…1 of a cycle
};

/// A stroke's sound as if it had been played with vibrato: earlier and later in turn.
analysis::Signal swayed(const analysis::Signal& sound, const Vibrato& vibrato);

}  // namespace tests
