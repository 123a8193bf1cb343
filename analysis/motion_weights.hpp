// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/motion.hpp"

namespace analysis {

inline constexpr std::size_t motion_hidden = 16;

/// A network of one hidden layer: features, less their mean and over their spread, to tanh units, to six shares.
struct MotionWeights {
    MotionFeatures mean{};
    MotionFeatures spread{};
    std::array<MotionFeatures, motion_hidden> hidden{};
    std::array<double, motion_hidden> hidden_bias{};
    std::array<std::array<double, motion_hidden>, motion_count> out{};
    std::array<double, motion_count> out_bias{};
};

/// Shares of the six motions by a network.
std::array<double, motion_count> shares_of(const MotionWeights& weights, const MotionFeatures& features);

/// The fitted ones; made by tests/motion/design.cpp.
extern const MotionWeights motion_weights;

}  // namespace analysis
