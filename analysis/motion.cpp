// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/motion.hpp"

#include "analysis/motion_weights.hpp"

#include <algorithm>

namespace analysis {

std::string_view heard_motion_name(HeardMotion motion) {
    constexpr std::array<std::string_view, motion_count + 1> names{
        "helmholtz", "multiple_slip", "raucous", "anomalous_low", "s_motion", "silent", "unclear"};
    return names[static_cast<std::size_t>(motion)];
}

MotionGuess guess_motion(const MotionFeatures& features) {
    MotionGuess guess{.shares = shares_of(motion_model(), features)};
    const auto likeliest = std::ranges::max_element(guess.shares);
    guess.confidence = *likeliest;
    if (guess.confidence >= least_motion_confidence)
        guess.motion = static_cast<HeardMotion>(likeliest - guess.shares.begin());
    return guess;
}

}  // namespace analysis
