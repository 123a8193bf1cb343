// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/partials.hpp"
#include "analysis/pitch.hpp"

#include <optional>
#include <span>
#include <vector>

namespace analysis {

/// A tone at one moment.
struct ToneFrame {
    double time = 0.0;         ///< s from the first sample, middle of the frame
    double hz = 0.0;           ///< pitch
    double clarity_db = 0.0;   ///< harmonic-to-noise ratio, as measure_clarity gives it
    double centroid_hz = 0.0;  ///< as Brightness; 0 where it was not asked for

    bool operator==(const ToneFrame&) const = default;
};

/// How far the partials of a tone lie from a harmonic series: n f1 sqrt((1 + B n²)/(1 + B)).
struct Inharmonicity {
    double b = 0.0;      ///< B; a bowed tone that repeats has 0
    double error = 0.0;  ///< standard error of B from the scatter of the partials

    bool operator==(const Inharmonicity&) const = default;
};

/// What a stretch of one steady tone says.
struct Tone {
    double hz = 0.0;           ///< median of the frames' pitches
    double stability = 0.0;    ///< cents, half of what lies between the 10th and 90th hundredth of the frames
    double clarity_db = 0.0;   ///< mean of the frames: the harmonic-to-noise ratio
    double level = 0.0;        ///< RMS of the stretch, in the samples' unit, its mean removed
    double centroid_hz = 0.0;  ///< of the partials' mean powers: sum f_n A_n / sum A_n, n f0 <= 8 kHz (Brightness)
    double power_centroid_hz =
        0.0;  ///< sum f |X|² / sum |X|² over the stretch's spectrum, above 0 to 10 kHz, no window
    std::vector<Partial> partials;               ///< to 10 kHz, at most 64; amplitude: root of the frames' mean square
    std::optional<Inharmonicity> inharmonicity;  ///< nothing where under 4 partials stand out
    std::vector<ToneFrame> frames;

    bool operator==(const Tone&) const = default;
};

inline constexpr double partials_limit_hz = 10000.0;

/// Measures one tone, or nothing where no pitch can be found in the range (see measure_fundamental).
///
/// Frames of ten periods (0.04 to 0.25 s), at most `most_frames` of them evenly spread, each at its own pitch: vibrato
/// then smears neither partials nor median.  Partials and centroids are taken over a third of the frames.
///
/// threads  any
struct ToneSearch {
    PitchRange range{30.0, 4500.0};
    std::size_t most_frames = 60;
};
std::optional<Tone> measure_tone(std::span<const double> samples, double sample_rate, const ToneSearch& search = {});

/// Power-weighted centroid of a spectrum as in Tone, up to `limit_hz`; 0 for silence.
double power_centroid(std::span<const double> samples, double sample_rate, double limit_hz);

}  // namespace analysis
