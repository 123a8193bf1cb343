// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/units.hpp"

#include <cmath>
#include <complex>
#include <cstddef>
#include <functional>
#include <numbers>
#include <ostream>
#include <random>
#include <vector>

/// Signals whose measures are known exactly.
namespace tests {

/// A tone made of harmonics; nothing of it lies above `max_hz`, so nothing folds back.
struct Tone {
    double hz = 0.0;
    double sample_rate = 0.0;
    double duration = 0.0;  ///< s
    double max_hz = 20000.0;
    double offset = 0.0;  ///< added to all samples
};

/// How GoogleTest names a tone.
inline void PrintTo(const Tone& tone, std::ostream* out) {
    *out << tone.hz << " Hz at " << tone.sample_rate << " Hz for " << tone.duration << " s";
}

/// Sum of amplitude(n) sin(n w t) over the harmonics up to max_hz.
inline std::vector<double> harmonic_tone(const Tone& tone, const std::function<double(int n)>& amplitude) {
    std::vector<double> samples(static_cast<std::size_t>(std::lround(tone.duration * tone.sample_rate)), tone.offset);
    for (int n = 1; n * tone.hz <= tone.max_hz; ++n) {
        const double a = amplitude(n);
        if (a == 0.0) continue;
        const double w = 2.0 * std::numbers::pi * n * tone.hz / tone.sample_rate;
        // A turning phasor: 1e5 turns lose about 1e-12, and it is many times quicker than a sine each.
        const std::complex<double> step = std::polar(1.0, w);
        std::complex<double> phasor = a;
        for (double& sample : samples) {
            sample += phasor.imag();
            phasor = {phasor.real() * step.real() - phasor.imag() * step.imag(),
                      phasor.real() * step.imag() + phasor.imag() * step.real()};
        }
    }
    return samples;
}

/// Harmonics 1/n: a sawtooth with its highest harmonics left out.
inline std::vector<double> sawtooth(const Tone& tone) {
    return harmonic_tone(tone, [](int n) { return 1.0 / n; });
}

inline std::vector<double> sine(const Tone& tone) {
    return harmonic_tone(tone, [](int n) { return n == 1 ? 1.0 : 0.0; });
}

/// White noise, so many dB under the power of what is there.
inline void add_noise(std::vector<double>& samples, double db_under, std::mt19937& engine) {
    std::normal_distribution<double> normal;
    double power = 0.0;
    for (const double sample : samples) power += sample * sample / static_cast<double>(samples.size());
    for (double& sample : samples) sample += std::sqrt(power) * analysis::ratio_from_db(-db_under) * normal(engine);
}

}  // namespace tests
