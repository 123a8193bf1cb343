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
    double clarity_db = 0.0;   ///< as measure_clarity gives it, at the lower rate at which pitch is followed
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
    double hz = 0.0;          ///< median of the frames' pitches
    double stability = 0.0;   ///< cents, half of what lies between the 10th and 90th hundredth of the frames
    double clarity_db = 0.0;  ///< mean of up to forty frames: the harmonic-to-noise ratio (measure_clarity)
    double level = 0.0;       ///< RMS of the stretch, in the samples' unit, its mean removed
    double centroid_hz =
        0.0;  ///< of the frames' partials, mean powers: sum f_n A_n / sum A_n, n f0 <= 8 kHz (Brightness)
    /// sum f |X|² / sum |X|² over the stretch's spectrum, without window, above 0 to 10 kHz
    double power_centroid_hz = 0.0;
    /// To 10 kHz, at most 64.  Amplitude: of a sine with the power of that same spectrum from half a fundamental below
    /// to half above, noise included.
    std::vector<Partial> partials;
    std::optional<Inharmonicity> inharmonicity;  ///< nothing where under 4 partials stand out
    std::vector<ToneFrame> frames;

    bool operator==(const Tone&) const = default;
};

inline constexpr double partials_limit_hz = 10000.0;

struct ToneSearch {
    PitchRange range{30.0, 4500.0};
    std::size_t most_frames = 200;
};

/// Measures one tone, or nothing where no pitch can be found in the range (see measure_fundamental).
///
/// Frames of six periods (0.02 to 0.2 s), at most `most_frames` of them evenly spread, each at its own pitch: vibrato
/// then smears neither centroid nor median.  Centroids are taken in up to eight of them.
///
/// threads  any
std::optional<Tone> measure_tone(std::span<const double> samples, double sample_rate, const ToneSearch& search = {});

}  // namespace analysis
