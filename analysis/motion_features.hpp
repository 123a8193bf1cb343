// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

namespace analysis {

/// What of a stretch of sound may tell how the string moves, as numbers of the order of 1, whatever the body and gain.
inline constexpr std::size_t motion_feature_count = 52;
using MotionFeatures = std::array<double, motion_feature_count>;

/// What is known beside the samples.
struct MotionContext {
    double noise = 0.0;        ///< RMS of the recording where nothing is played; 0 = not known
    double loudest = 0.0;      ///< RMS of the note's loudest tenth of a second
    double intended_hz = 0.0;  ///< the note that was stopped; 0 = not known
};

/// Features of a note's last 0.2 to 0.4 s before its release.
///
/// shape    see feature_names
/// threads  any
MotionFeatures motion_features(std::span<const double> samples, double sample_rate, const MotionContext& context);

}  // namespace analysis
