// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/tone.hpp"
#include "analysis/fundamental.hpp"
#include "analysis/units.hpp"
#include "tests/analysis/tones.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace {

constexpr double rate = 48000.0;

void add_noise(std::vector<double>& samples, double db_under, std::mt19937& engine) {
    std::normal_distribution<double> normal;
    double power = 0.0;
    for (const double sample : samples) power += sample * sample / static_cast<double>(samples.size());
    for (double& sample : samples) sample += std::sqrt(power) * analysis::ratio_from_db(-db_under) * normal(engine);
}

/// A tone without its fundamental: partials 2 to 12 by chance, two neighbours for certain, within 20 dB of one another.
struct Bare {
    double hz = 0.0;
    std::vector<double> samples;
    std::string what;
};
Bare bare_tone(std::mt19937& engine) {
    const auto between = [&](double low, double high) { return std::uniform_real_distribution<>(low, high)(engine); };
    Bare bare{.hz = 40.0 * std::pow(25.0, between(0.0, 1.0)), .samples = {}, .what = {}};
    const int sure = static_cast<int>(between(2.0, 6.0));
    std::vector<double> amplitudes(13, 0.0);
    for (int n = 2; n <= 12; ++n)
        if (n == sure || n == sure + 1 || between(0.0, 1.0) < 0.4) {
            amplitudes[static_cast<std::size_t>(n)] = analysis::ratio_from_db(between(-20.0, 0.0));
            bare.what += " " + std::to_string(n);
        }
    bare.samples = tests::harmonic_tone({.hz = bare.hz, .sample_rate = rate, .duration = 0.5},
                                        [&](int n) { return n <= 12 ? amplitudes[static_cast<std::size_t>(n)] : 0.0; });
    add_noise(bare.samples, between(20.0, 40.0), engine);
    return bare;
}

/// expects  no octave error in 1000 tones of 40 to 1000 Hz with noise 20 to 40 dB under them
/// margin   half a semitone: what lies nearer is no other octave
TEST(FundamentalTest, FindsTheOctaveOfTonesWithoutTheirFundamental) {
    std::mt19937 engine(7);
    int wrong = 0;
    for (int i = 0; i < 1000; ++i) {
        const Bare bare = bare_tone(engine);
        const auto pitch = analysis::measure_fundamental(bare.samples, rate, {30.0, 4500.0});
        ASSERT_TRUE(pitch);
        if (std::abs(analysis::cents_between(pitch->hz, bare.hz)) < 50.0) continue;
        ++wrong;
        ADD_FAILURE() << bare.hz << " Hz heard as " << pitch->hz << "; partials" << bare.what;
    }
    EXPECT_EQ(wrong, 0);
}

/// expects  pitch within 0.5 cent at 40 dB of noise, and the centroid within 1 %, from 40 Hz to 2 kHz
/// margin   as said; the centroid of partials 1/n up to 7.5 kHz is worked out here
TEST(ToneTest, PitchAndCentroidOfNoisySawtooths) {
    std::mt19937 engine(5);
    double worst_cents = 0.0;
    double worst_percent = 0.0;
    for (const double hz : {40.0, 55.3, 77.7, 110.0, 196.4, 311.1, 440.0, 701.3, 1001.7, 1499.0, 2000.0}) {
        std::vector<double> samples =
            tests::sawtooth({.hz = hz, .sample_rate = rate, .duration = 1.0, .max_hz = 7500.0});
        add_noise(samples, 40.0, engine);
        const auto tone = analysis::measure_tone(samples, rate);
        ASSERT_TRUE(tone) << hz;
        double weight = 0.0;
        double moment = 0.0;
        for (int n = 1; n * hz <= 7500.0; ++n) {
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

/// expects  B of stiff tones within 2 % or 1e-6, and 0 for a harmonic one
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
