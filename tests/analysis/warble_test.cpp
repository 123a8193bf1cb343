// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/warble.hpp"

#include "analysis/units.hpp"
#include "tests/analysis/tones.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <random>

namespace {

using analysis::measure_warble;

constexpr double rate = 48000.0;

/// A sawtooth whose amplitude goes as 1 + m cos(2 pi f t), or up and down evenly in dB.
struct Beating {
    double hz;      ///< pitch
    double warble;  ///< f, Hz
    double depth;   ///< m
    double seconds;
    double decay = 0.0;  ///< 1/s, of the amplitude beside
};
std::vector<double> beating_tone(const Beating& b) {
    std::vector<double> samples = tests::sawtooth({.hz = b.hz, .sample_rate = rate, .duration = b.seconds});
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const double t = static_cast<double>(i) / rate;
        samples[i] *= (1.0 + b.depth * std::cos(2.0 * std::numbers::pi * b.warble * t)) * std::exp(-b.decay * t);
    }
    return samples;
}

double depth_db(double m) { return analysis::db_from_ratio((1.0 + m) / (1.0 - m)); }

std::vector<double> noise(double seconds, double amplitude) {
    std::mt19937 engine(7);
    std::normal_distribution<double> spread(0.0, amplitude);
    std::vector<double> samples(static_cast<std::size_t>(seconds * rate));
    for (double& sample : samples) sample = spread(engine);
    return samples;
}

/// Noise through a resonance of that Q: its level flutters by itself, without a rate.
std::vector<double> narrow_noise(double hz, double q, double seconds) {
    const double w = 2.0 * std::numbers::pi * hz / rate;
    const double r = std::exp(-w / (2.0 * q));
    std::vector<double> samples = noise(seconds, 1.0);
    double before = 0.0;
    double earlier = 0.0;
    for (double& sample : samples) {
        sample += 2.0 * r * std::cos(w) * before - r * r * earlier;
        earlier = before;
        before = sample;
    }
    return samples;
}

}  // namespace

/// source   amplitude 1 + m cos: from trough to crest 20 log10((1 + m)/(1 - m)) dB (derived)
/// expects  that depth and the rate, for low and high notes and slow and quick warbles
/// margin   10 % of the depth, 0.1 Hz: as the header says
TEST(WarbleTest, HasTheDepthAndRateThatWerePutIn) {
    for (const double hz : {65.4, 180.0, 587.0})
        for (const double warble : {2.6, 5.0, 8.3, 14.0})
            for (const double m : {0.1, 0.7}) {
                const auto found =
                    measure_warble(beating_tone({.hz = hz, .warble = warble, .depth = m, .seconds = 3.0}), rate);
                ASSERT_TRUE(found.has_value()) << hz << " Hz, " << warble << " a second, m " << m;
                EXPECT_NEAR(found->depth_db, depth_db(m), 0.1 * depth_db(m)) << hz << ", " << warble;
                EXPECT_NEAR(found->rate_hz, warble, 0.1) << hz << ", " << m;
                EXPECT_GT(found->share, 0.9);
            }
}

/// margin   10 %, 0.1 Hz
TEST(WarbleTest, IsFoundUnderNoiseAndBesideADecay) {
    std::vector<double> samples =
        beating_tone({.hz = 196.0, .warble = 6.0, .depth = 0.4, .seconds = 2.0, .decay = 1.5});
    const std::vector<double> hiss = noise(2.0, 0.02);
    for (std::size_t i = 0; i < samples.size(); ++i) samples[i] += hiss[i];
    const auto found = measure_warble(samples, rate);
    ASSERT_TRUE(found.has_value());
    EXPECT_NEAR(found->depth_db, depth_db(0.4), 0.1 * depth_db(0.4));
    EXPECT_NEAR(found->rate_hz, 6.0, 0.1);
}

/// expects  no warble in what is steady, dies away, is noise, flutters without a rate, or warbles too little, too
///          slowly or too quickly
TEST(WarbleTest, IsNotHeardWhereThereIsNone) {
    EXPECT_FALSE(measure_warble(tests::sawtooth({.hz = 65.4, .sample_rate = rate, .duration = 3.0}), rate));
    EXPECT_FALSE(measure_warble(tests::sine({.hz = 440.0, .sample_rate = rate, .duration = 3.0}), rate));
    EXPECT_FALSE(
        measure_warble(beating_tone({.hz = 196.0, .warble = 5.0, .depth = 0.0, .seconds = 3.0, .decay = 2.0}), rate));
    EXPECT_FALSE(measure_warble(noise(3.0, 1.0), rate));
    for (const double q : {10.0, 50.0}) EXPECT_FALSE(measure_warble(narrow_noise(200.0, q, 4.0), rate)) << q;
    EXPECT_FALSE(measure_warble(beating_tone({.hz = 196.0, .warble = 5.0, .depth = 0.04, .seconds = 3.0}), rate));
    EXPECT_FALSE(measure_warble(beating_tone({.hz = 196.0, .warble = 0.7, .depth = 0.5, .seconds = 3.0}), rate));
    EXPECT_FALSE(measure_warble(beating_tone({.hz = 196.0, .warble = 25.0, .depth = 0.5, .seconds = 3.0}), rate));
}

TEST(WarbleTest, NeedsHalfASecondOfSound) {
    EXPECT_FALSE(measure_warble({}, rate));
    EXPECT_FALSE(measure_warble(std::vector<double>(96000, 0.0), rate));
    EXPECT_FALSE(measure_warble(beating_tone({.hz = 196.0, .warble = 10.0, .depth = 0.5, .seconds = 0.45}), rate));
    EXPECT_TRUE(measure_warble(beating_tone({.hz = 196.0, .warble = 10.0, .depth = 0.5, .seconds = 0.6}), rate));
    std::vector<double> broken = beating_tone({.hz = 196.0, .warble = 5.0, .depth = 0.5, .seconds = 1.0});
    broken[1000] = std::numeric_limits<double>::quiet_NaN();
    EXPECT_FALSE(measure_warble(broken, rate));
}
