// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/motion.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace analysis {

/// Sums of the inputs; tanh of them goes to the next layer.
struct MotionLayer {
    std::size_t inputs = 0;
    std::size_t outputs = 0;
    std::vector<float> weights;  ///< [output][input], input fastest
    std::vector<float> biases;   ///< [output]

    bool operator==(const MotionLayer&) const = default;
};

/// Layers from features to six sums, whose softmax are the shares.
using MotionNetwork = std::vector<MotionLayer>;

/// Networks that vote: the mean of their shares counts.  Each gets the features less their mean and over their spread.
struct MotionModel {
    std::vector<float> mean;
    std::vector<float> spread;
    std::vector<MotionNetwork> networks;

    bool operator==(const MotionModel&) const = default;
};

/// Shares of the six motions; sum 1.
std::array<double, motion_count> shares_of(const MotionModel& model, const MotionFeatures& features);

/// As text: lines that begin with # are for people; then numbers, three digits each.
std::string motion_model_text(const MotionModel& model, std::string_view remark);
/// Undoes motion_model_text; std::runtime_error where the text is none or is of other features.
MotionModel read_motion_model(std::string_view text);

/// The fitted one: analysis/motion_weights.txt as it was compiled in, written by tests/motion/design.cpp.
const MotionModel& motion_model();

}  // namespace analysis
