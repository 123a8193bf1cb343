// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/tone.hpp"
#include "analysis/units.hpp"
#include "tests/analysis/tones.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace {

constexpr double rate = 48000.0;

/// expects  pitch within 0.5 cent at 40 dB of noise, and the centroid within 1 %, from 40 Hz to 2 kHz
/// margin   as said; the centroid of partials 1/n up to 8 kHz, where ours ends too, is worked out here.  The tones go
/// on
///          to 20 kHz.  No pitch has a partial within a cent of 8 kHz: whether that one counts would be a matter of
///          chance
TEST(ToneTest, PitchAndCentroidOfNoisySawtooths) {
    std::mt19937 engine(5);
    double worst_cents = 0.0;
    double worst_percent = 0.0;
    for (const double hz : {40.1, 55.3, 77.7, 110.0, 196.4, 311.1, 440.0, 701.3, 1001.7, 1499.0, 1990.0}) {
        std::vector<double> samples =
            tests::sawtooth({.hz = hz, .sample_rate = rate, .duration = 1.0, .max_hz = 20000.0});
        tests::add_noise(samples, 40.0, engine);
        const auto tone = analysis::measure_tone(samples, rate);
        ASSERT_TRUE(tone) << hz;
        double weight = 0.0;
        double moment = 0.0;
        for (int n = 1; n * hz <= 8000.0; ++n) {
            weight += 1.0 / n;
            moment += hz;
        }
        worst_cents = std::max(worst_cents, std::abs(analysis::cents_between(tone->hz, hz)));
        worst_percent = std::max(worst_percent, 100.0 * std::abs(tone->centroid_hz / (moment / weight) - 1.0));
        EXPECT_NEAR(analysis::cents_between(tone->hz, hz), 0.0, 0.5) << hz;
        EXPECT_NEAR(tone->centroid_hz / (moment / weight), 1.0, 0.01) << hz;
    }
    std::printf("worst: %.2f cents, centroid %.2f %%\n", worst_cents, worst_percent);
}

/// expects  B of stiff tones within 2 % or 1e-6, and 0 for a harmonic one, up to what thick gut has when plucked
/// margin   2 %: partials pull the common pitch a little
TEST(ToneTest, InharmonicityOfStiffTones) {
    for (const double b : {0.0, 2e-5, 1e-4, 4e-4}) {
        std::vector<double> samples(static_cast<std::size_t>(rate));
        for (int n = 1; n <= 20; ++n) {
            const double hz = n * 200.0 * std::sqrt((1.0 + b * n * n) / (1.0 + b));
            for (std::size_t j = 0; j < samples.size(); ++j)
                samples[j] += std::sin(2.0 * std::numbers::pi * hz * static_cast<double>(j) / rate) / n;
        }
        const auto tone = analysis::measure_tone(samples, rate);
        ASSERT_TRUE(tone && tone->inharmonicity);
        EXPECT_NEAR(tone->inharmonicity->b, b, std::max(0.02 * b, 1e-6)) << b;
    }
}

}  // namespace
