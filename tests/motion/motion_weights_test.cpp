// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/motion_weights.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <stdexcept>

namespace {

using analysis::motion_count;
using analysis::motion_feature_count;

/// One network of one layer, which asks for the first feature alone.
analysis::MotionModel first_feature_model() {
    analysis::MotionLayer layer{.inputs = motion_feature_count,
                                .outputs = motion_count,
                                .weights = std::vector<float>(motion_feature_count * motion_count),
                                .biases = std::vector<float>(motion_count)};
    layer.weights[0] = 2.0F;
    return {.mean = std::vector<float>(motion_feature_count, 0.25F),
            .spread = std::vector<float>(motion_feature_count, 0.5F),
            .networks = {{layer}}};
}

/// source   derived: one sum of six is 2 (1.25 - 0.25)/0.5 = 4, held at four spreads before that; the others are 0
/// expects  softmax of it, e^4/(e^4 + 5)
/// margin   1e-6, single precision
TEST(MotionWeights, SharesAreTheSoftmaxOfTheSums) {
    analysis::MotionFeatures features{};
    features.fill(0.25);
    features[0] = 1.25;
    const auto shares = shares_of(first_feature_model(), features);
    const double expected = std::exp(4.0) / (std::exp(4.0) + 5.0);
    EXPECT_NEAR(shares[0], expected, 1e-6);
    EXPECT_NEAR(std::accumulate(shares.begin(), shares.end(), 0.0), 1.0, 1e-12);
}

/// source   derived: what lies beyond four spreads counts as four
/// expects  the same shares for 4 and 400 spreads
/// margin   none
TEST(MotionWeights, WhatLiesFarOutsideIsHeldAtFourSpreads) {
    analysis::MotionFeatures features{};
    features.fill(0.25);
    features[0] = 0.25 + 4.0 * 0.5;
    const auto at_four = shares_of(first_feature_model(), features);
    features[0] = 0.25 + 400.0 * 0.5;
    EXPECT_EQ(shares_of(first_feature_model(), features), at_four);
}

/// source   none: numbers of three digits or fewer must survive as they are
/// expects  the same model read back
/// margin   none
TEST(MotionWeights, TextIsReadBack) {
    const analysis::MotionModel model = first_feature_model();
    EXPECT_EQ(analysis::read_motion_model(motion_model_text(model, "of a test")), model);
}

/// source   none
/// expects  an error for what is no such text, too short, or of other features
TEST(MotionWeights, OtherTextsAreRefused) {
    const std::string good = motion_model_text(first_feature_model(), "of a test");
    EXPECT_THROW(analysis::read_motion_model(""), std::runtime_error);
    EXPECT_THROW(analysis::read_motion_model("# 177\nnothing"), std::runtime_error);
    EXPECT_THROW(analysis::read_motion_model("3\n1 2 3\n1 1 1\n"), std::runtime_error);
    EXPECT_THROW(analysis::read_motion_model(good.substr(0, good.size() / 2)), std::runtime_error);
}

/// source   none
/// expects  the built-in networks to be there and to read as many features as there are
TEST(MotionWeights, BuiltInNetworksAreWhole) {
    const analysis::MotionModel& model = analysis::motion_model();
    ASSERT_FALSE(model.networks.empty());
    for (const analysis::MotionNetwork& network : model.networks) {
        EXPECT_EQ(network.front().inputs, motion_feature_count);
        EXPECT_EQ(network.back().outputs, motion_count);
    }
}

}  // namespace
