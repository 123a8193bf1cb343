// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/motion_weights.hpp"
#include "tests/motion/examples.hpp"

#include <cstdint>
#include <vector>

namespace tests {

struct FitPlan {
    std::vector<std::size_t> hidden{32};  ///< units of each hidden layer
    int networks = 5;                     ///< each held to another fifth of the scenes
    int epochs = 25;                      ///< at the most; the best on the held-out scenes is kept
    double rate = 1e-3;                   ///< of the steps at first; it sinks to nothing by half a cosine
    double decay = 3e-3;                  ///< of the weights
    double blur = 0.4;                    ///< noise on the inputs, of their spread, so that nothing is learnt by heart
    double evenness = 0.5;  ///< a motion weighs as its count to the power of minus this; 1: all motions weigh alike
    std::uint32_t seed = 1;
    bool tells = false;  ///< prints how it goes
};

/// Which of five parts of the scenes it belongs to; network n has not seen part n.
int fold_of(const Example& example);

/// Fits networks to examples; the same numbers on every run of one machine.
analysis::MotionModel fit_motions(const std::vector<Example>& examples, const FitPlan& plan);

}  // namespace tests
