// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>
#include <optional>
#include <span>
#include <vector>

namespace analysis {

/// One harmonic of a tone.
struct Partial {
    double hz = 0.0;         ///< n times the fundamental
    double amplitude = 0.0;  ///< peak of the sine, in the samples' unit

    bool operator==(const Partial&) const = default;
};

/// Which harmonics to measure: n fundamental_hz <= max_hz, n = 1, 2, …
struct HarmonicSeries {
    double fundamental_hz = 0.0;  ///< > 0; the *measured* pitch, or leakage invents dullness
    double max_hz = 0.0;

    bool operator==(const HarmonicSeries&) const = default;
};

/// Amplitudes of the harmonics up to max_hz (and under half the sample rate), in order of n.
///
/// A Fourier sum at exactly n times the fundamental under a Hann window over the last whole number of periods, the most
/// that fit: the window's zeros then lie on all other harmonics and on the mean.  Under two periods: empty.
///
/// accuracy a pitch wrong by e bins (of 1/window, e < 0.3) costs 2 e² dB at that harmonic
/// threads  any
std::vector<Partial> measure_partials(std::span<const double> samples, double sample_rate,
                                      const HarmonicSeries& series);

/// The same with their phases: a sine of amplitude a and phase p (of a cosine at the window's first sample) gives
/// a exp(i p).
struct HarmonicSums {
    std::vector<std::complex<double>> values;  ///< in order of n
    double duration = 0.0;                     ///< s, of the window, which ends with the samples
};
HarmonicSums harmonic_sums(std::span<const double> samples, double sample_rate, const HarmonicSeries& series);

/// Where the weight of a spectrum lies.
struct Brightness {
    double centroid_hz = 0.0;    ///< sum f_n A_n / sum A_n, A_n amplitudes (not powers), f_n <= brightness_limit_hz
    double brightness_f0 = 0.0;  ///< centroid in multiples of the fundamental

    bool operator==(const Brightness&) const = default;
};

inline constexpr double brightness_limit_hz = 8000.0;

/// Brightness of a tone; nothing when no partial lies under the limit or all are 0.
std::optional<Brightness> brightness(std::span<const Partial> partials, double fundamental_hz);

}  // namespace analysis
