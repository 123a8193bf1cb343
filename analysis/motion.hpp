// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/motion_features.hpp"

#include <array>
#include <string_view>

namespace analysis {

/// How a bowed string seems to move, by its sound.  The first six are the motions that a simulation knows.
enum class HeardMotion { helmholtz, multiple_slip, raucous, anomalous_low, s_motion, silent, unclear };
inline constexpr std::size_t motion_count = 6;  ///< without unclear
std::string_view heard_motion_name(HeardMotion motion);

/// What a sound tells of the motion.
struct MotionGuess {
    HeardMotion motion = HeardMotion::unclear;
    double confidence = 0.0;                    ///< share of such sounds that had this motion, 0…1
    std::array<double, motion_count> shares{};  ///< the same for each; sum 1

    bool operator==(const MotionGuess&) const = default;
};

/// Names the motion of a bowed note from its features: the likeliest of the six, or unclear where none reaches
/// least_motion_confidence.
///
/// Five small networks vote (motion_weights.hpp), fitted to simulated strokes over changed bodies with noise, some with
/// vibrato and in rooms; the instruments and seeds they are tested with are others (tests/motion).  How often they are
/// right, and what is taken for what, stands in tests/reports/motions.md.  S-motion is told from
/// Helmholtz motion, and this from a second slip that is small, by the levels of the first partials, which an unknown
/// body changes by more than the motions differ.
MotionGuess guess_motion(const MotionFeatures& features);

/// Of the guesses up to 0.05 over it 44 % are right, of those up to 0.1 under it a third (strokes held out of the fit).
inline constexpr double least_motion_confidence = 0.4;

}  // namespace analysis
