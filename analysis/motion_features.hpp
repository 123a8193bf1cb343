// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

namespace analysis {

/// What of a stretch of sound may tell how the string moves, as numbers of the order of 1, whatever the body and gain.
inline constexpr std::size_t motion_feature_count = 208;
using MotionFeatures = std::array<double, motion_feature_count>;

/// What is known beside the samples.
struct MotionContext {
    double noise = 0.0;        ///< RMS of the recording where nothing is played; 0 = not known
    double intended_hz = 0.0;  ///< the note that was stopped; 0 = not known
    bool still = false;        ///< its pitch is known not to stray: vibrato isn't looked for, which takes time
};

/// How much of a note's end is listened to, s.
inline constexpr double motion_time = 0.6;

/// Features of the end of a note's steady part, its last `motion_time` at the most; vibrato is taken out before.
///
/// Where the note is known, partials and periods are those of the tone nearest to it, else those of the measured pitch.
///
/// threads  any
MotionFeatures motion_features(std::span<const double> samples, double sample_rate, const MotionContext& context);

}  // namespace analysis
