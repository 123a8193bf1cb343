// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/motion.hpp"

#include "analysis/motion_weights.hpp"

#include <algorithm>
#include <cmath>

namespace analysis {

std::string_view heard_motion_name(HeardMotion motion) {
    constexpr std::array<std::string_view, motion_count + 1> names{
        "helmholtz", "multiple_slip", "raucous", "anomalous_low", "s_motion", "silent", "unclear"};
    return names[static_cast<std::size_t>(motion)];
}

std::array<double, motion_count> shares_of(const MotionWeights& weights, const MotionFeatures& features) {
    std::array<double, motion_hidden> units{};
    for (std::size_t h = 0; h < motion_hidden; ++h) {
        double sum = weights.hidden_bias[h];
        for (std::size_t i = 0; i < motion_feature_count; ++i) {
            // Beyond what the fit saw nothing is known: held at four spreads.
            const double value = (features[i] - weights.mean[i]) / weights.spread[i];
            sum += weights.hidden[h][i] * std::clamp(value, -4.0, 4.0);
        }
        units[h] = std::tanh(sum);
    }
    std::array<double, motion_count> shares{};
    for (std::size_t m = 0; m < motion_count; ++m) {
        shares[m] = weights.out_bias[m];
        for (std::size_t h = 0; h < motion_hidden; ++h) shares[m] += weights.out[m][h] * units[h];
    }
    const double greatest = *std::ranges::max_element(shares);
    double sum = 0.0;
    for (double& share : shares) sum += share = std::exp(share - greatest);
    for (double& share : shares) share /= sum;
    return shares;
}

MotionGuess guess_motion(const MotionFeatures& features) {
    MotionGuess guess{.shares = shares_of(motion_weights, features)};
    const auto likeliest = std::ranges::max_element(guess.shares);
    guess.confidence = *likeliest;
    if (guess.confidence >= least_motion_confidence)
        guess.motion = static_cast<HeardMotion>(likeliest - guess.shares.begin());
    return guess;
}

}  // namespace analysis
