// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/recital.hpp"

#include <sndfile.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <numbers>
#include <random>
#include <span>
#include <utility>
#include <vector>

namespace tests {
namespace {

constexpr double rate = 48000.0;
constexpr double minute = 60.0;  // s
constexpr int minutes = 10;

double resonance(double hz, double centre, double q) {
    const double detuning = q * (hz / centre - centre / hz);
    return 1.0 / std::sqrt(1.0 + detuning * detuning);
}

double body(double hz) {
    return 0.2 + resonance(hz, 280.0, 15.0) + resonance(hz, 470.0, 20.0) + 0.7 * resonance(hz, 1100.0, 5.0) +
           0.5 * resonance(hz, 2500.0, 2.0);
}

struct Bowed {
    double hz = 0.0;
    double vibrato = 0.0;  // share of the pitch
    std::size_t count = 0;
};

void add(const Bowed& note, std::span<double> samples) {
    std::vector<double> amplitudes;
    for (int n = 1; n * note.hz < 15000.0; ++n) amplitudes.push_back(0.1 / n * body(n * note.hz));
    double phase = 0.0;
    for (std::size_t j = 0; j < std::min(note.count, samples.size()); ++j) {
        const double t = static_cast<double>(j) / rate;
        const double left = static_cast<double>(note.count - j) / rate;
        phase +=
            2.0 * std::numbers::pi * note.hz / rate * (1.0 + note.vibrato * std::sin(2.0 * std::numbers::pi * 5.5 * t));
        // sin nx by their recurrence.
        double before = 0.0;
        double sine = std::sin(phase);
        double sum = 0.0;
        for (const double amplitude : amplitudes) {
            sum += amplitude * sine;
            before = std::exchange(sine, 2.0 * std::cos(phase) * sine - before);
        }
        samples[j] += sum * std::clamp(std::min(t / 0.03, left / 0.05), 0.0, 1.0);
    }
}

std::vector<double> one_minute() {
    std::mt19937 engine(1);
    const auto between = [&](double low, double high) { return std::uniform_real_distribution<>(low, high)(engine); };
    std::vector<double> samples(static_cast<std::size_t>(minute * rate));
    for (double at = 0.2; at < minute - 2.2;) {
        const double lasts = between(0.25, 1.3) * (between(0.0, 1.0) < 0.1 ? 1.6 : 1.0);
        Bowed note{.hz = 60.0 * std::exp2(between(0.0, 4.4)), .vibrato = 0.0, .count = 0};
        note.count = static_cast<std::size_t>(lasts * rate);
        if (between(0.0, 1.0) < 0.33) note.vibrato = 0.012;
        add(note, std::span(samples).subspan(static_cast<std::size_t>(at * rate)));
        at += lasts + (between(0.0, 1.0) < 0.33 ? 0.0 : between(0.02, 0.3));
    }
    std::normal_distribution<double> normal;
    for (double& sample : samples) sample += 2e-4 * normal(engine);
    return samples;
}

}  // namespace

void write_recital(const std::filesystem::path& file) {
    const std::vector<double> mono = one_minute();
    std::vector<double> stereo;
    for (const double sample : mono) stereo.insert(stereo.end(), {0.9 * sample, 0.8 * sample});
    SF_INFO info{.frames = 0,
                 .samplerate = static_cast<int>(rate),
                 .channels = 2,
                 .format = SF_FORMAT_WAV | SF_FORMAT_PCM_16,
                 .sections = 0,
                 .seekable = 0};
    const std::unique_ptr<SNDFILE, decltype(&sf_close)> out(sf_open(file.c_str(), SFM_WRITE, &info), sf_close);
    for (int i = 0; i < minutes; ++i) sf_writef_double(out.get(), stereo.data(), static_cast<sf_count_t>(mono.size()));
}

}  // namespace tests
