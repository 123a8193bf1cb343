// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/pitch.hpp"

#include "analysis/partials.hpp"
#include "analysis/units.hpp"
#include "tests/analysis/tones.hpp"

#include <gtest/gtest.h>
#include <limits>
#include <random>
#include <thread>

namespace {

using analysis::measure_pitch;
using analysis::Pitch;
using analysis::pitch_range_around;
using tests::Tone;

constexpr double periods_for_half_a_cent = 8.0;

/// Cents off, far off when nothing was found.
double error_cents(const std::vector<double>& samples, const Tone& tone, double expected) {
    const std::optional<Pitch> pitch = measure_pitch(samples, tone.sample_rate, pitch_range_around(expected));
    return pitch ? std::abs(analysis::cents_between(pitch->hz, tone.hz)) : 9999.0;
}

class PitchTest : public testing::TestWithParam<Tone> {};

std::vector<Tone> tones() {
    std::vector<Tone> result;
    for (const double hz : {40.0, 73.42, 146.83, 196.3, 440.0, 829.8, 1567.7, 2500.0}) {
        for (const double rate : {48000.0, 60000.0, 96000.0, 251327.4, 1000000.0}) {
            result.push_back({.hz = hz, .sample_rate = rate, .duration = 0.1});
        }
    }
    return result;
}

INSTANTIATE_TEST_SUITE_P(ManyNotesAndRates, PitchTest, testing::ValuesIn(tones()));

/// expects  the tone's own frequency
/// margin   0.5 cent from 8 periods on, 2 cents with 4: what pitch.hpp promises
TEST_P(PitchTest, SawtoothIsFoundWhereverInTheRangeItLies) {
    const Tone tone = GetParam();
    const double margin = tone.hz * tone.duration >= periods_for_half_a_cent ? 0.5 : 2.0;
    const std::vector<double> samples = tests::sawtooth(tone);
    for (const double ratio : {0.81, 0.95, 1.0, 1.06, 1.24}) {
        EXPECT_LT(error_cents(samples, tone, tone.hz * ratio), margin) << "expected at " << ratio;
    }
}

TEST_P(PitchTest, RoundedSawtoothOnALargeOffsetIsFound) {
    Tone tone = GetParam();
    tone.offset = 30.0;
    const auto samples = tests::harmonic_tone(tone, [](int n) { return std::exp(-0.2 * n) / n; });
    const double margin = tone.hz * tone.duration >= periods_for_half_a_cent ? 0.5 : 2.0;
    EXPECT_LT(error_cents(samples, tone, tone.hz * 1.03), margin);
}

TEST_P(PitchTest, ToneWithoutItsFundamentalIsFound) {
    const Tone tone = GetParam();
    const auto samples = tests::harmonic_tone(tone, [](int n) { return n >= 2 && n <= 5 ? 1.0 : 0.0; });
    const double margin = tone.hz * tone.duration >= periods_for_half_a_cent ? 0.5 : 2.0;
    EXPECT_LT(error_cents(samples, tone, tone.hz * 0.97), margin);
}

TEST_P(PitchTest, EightPeriodsAreEnoughForHalfACent) {
    Tone tone = GetParam();
    tone.duration = periods_for_half_a_cent / tone.hz + 0.0012;  // the low-pass takes up to 0.7 ms
    EXPECT_LT(error_cents(tests::sawtooth(tone), tone, tone.hz), 0.5);
}

/// expects  no octave above (half a period is no period of a sawtooth) and none below (two periods are one too many)
TEST_P(PitchTest, OctavesAreNotMistakenInARangeOfFourOctaves) {
    const Tone tone = GetParam();
    const auto pitch = measure_pitch(tests::sawtooth(tone), tone.sample_rate, {tone.hz / 4.3, tone.hz * 3.8});
    ASSERT_TRUE(pitch);
    EXPECT_LT(std::abs(analysis::cents_between(pitch->hz, tone.hz)), 2.0);
}

/// expects  60 dB, the ceiling, for what repeats exactly; the low-pass and the interpolation cost some of it
TEST_P(PitchTest, ClarityOfAPeriodicToneIsHigh) {
    const Tone tone = GetParam();
    const auto pitch = measure_pitch(tests::sawtooth(tone), tone.sample_rate, pitch_range_around(tone.hz));
    ASSERT_TRUE(pitch);
    EXPECT_GT(pitch->clarity_db, 35.0);
    EXPECT_LE(pitch->clarity_db, 60.0);
    EXPECT_LE(pitch->periodicity, 1.0);
}

/// A sawtooth of power 1 and independent white noise of that many dB less.
std::vector<double> noisy_tone(const Tone& tone, double ratio_db, unsigned seed) {
    std::vector<double> samples = tests::sawtooth(tone);
    double power = 0.0;
    for (const double sample : samples) power += sample * sample / static_cast<double>(samples.size());
    std::mt19937 random(seed);
    std::normal_distribution<double> noise(0.0, std::sqrt(power * std::pow(10.0, -ratio_db / 10.0)));
    for (double& sample : samples) sample += noise(random);
    return samples;
}

std::vector<double> white_noise(unsigned seed) {
    std::mt19937 random(seed);
    std::normal_distribution<double> noise;
    std::vector<double> samples(4800);
    for (double& sample : samples) sample = noise(random);
    return samples;
}

double clarity(const std::vector<double>& samples, double expected_hz) {
    return analysis::measure_clarity(samples, 48000.0, pitch_range_around(expected_hz));
}

class ClarityOfNoisyToneTest : public testing::TestWithParam<double> {};

/// source   tone of power S in independent noise of power N: p = S/(S + N), so clarity is 10 log10(S/N)
/// expects  the ratio the signal was made with, which rises with it
/// margin   1 dB over 22 to 83 periods: chance in 4800 samples of noise, at -6 dB one standard deviation of r (0.02) is
///          0.45 dB; what pitch.hpp promises
TEST_P(ClarityOfNoisyToneTest, IsTheHarmonicToNoiseRatio) {
    const Tone tone{.hz = GetParam(), .sample_rate = 48000.0, .duration = 0.1};
    double before = -60.0;
    for (const double ratio_db : {-6.0, 0.0, 6.0, 10.0, 20.0, 30.0}) {
        const std::vector<double> samples = noisy_tone(tone, ratio_db, 1);
        const double measured = clarity(samples, tone.hz);
        EXPECT_NEAR(measured, ratio_db, 1.0);
        EXPECT_GT(measured, before) << ratio_db << " dB";
        before = measured;
        const auto pitch = measure_pitch(samples, tone.sample_rate, pitch_range_around(tone.hz));
        ASSERT_TRUE(pitch);
        EXPECT_EQ(pitch->clarity_db, measured);
    }
    EXPECT_GT(clarity(tests::sawtooth(tone), tone.hz), before);
}

INSTANTIATE_TEST_SUITE_P(Notes, ClarityOfNoisyToneTest, testing::Values(220.0, 293.7, 587.3, 829.8));

/// expects  what chance repetition gives, for each of twenty noises, and a number where there is no pitch
/// margin   r's standard deviation over a third of a lag range of 4800 samples is 0.015, its greatest about 0.05: -13
/// dB
TEST(ClarityTest, OfNoiseIsLowButANumber) {
    for (unsigned seed = 1; seed <= 20; ++seed) {
        const double measured = clarity(white_noise(seed), 220.0);
        EXPECT_LT(measured, -8.0) << seed;
        EXPECT_GT(measured, -30.0) << seed;
    }
}

/// expects  the least for what drifts but doesn't repeat, though its r is near 1 at all short lags, and for nothing
TEST(ClarityTest, OfADriftOfSilenceAndOfNoNumberIsTheLeast) {
    std::vector<double> ramp(4800);
    for (std::size_t i = 0; i < ramp.size(); ++i) ramp[i] = 1.0 + 1e-3 * static_cast<double>(i);
    EXPECT_FALSE(measure_pitch(ramp, 48000.0, pitch_range_around(220.0)));
    EXPECT_EQ(clarity(ramp, 220.0), -60.0);
    EXPECT_EQ(clarity(std::vector<double>(4800, 0.3), 220.0), -60.0);
    EXPECT_EQ(clarity({}, 220.0), -60.0);
    EXPECT_EQ(clarity(std::vector<double>(4800, std::numeric_limits<double>::quiet_NaN()), 220.0), -60.0);
}

/// expects  a drift of ten times the tone's power not to make a noisy tone clearer, though it repeats at any short lag
/// margin   half a decibel, chance
TEST(ClarityTest, IsNotRaisedByADrift) {
    const Tone tone{.hz = 220.0, .sample_rate = 48000.0, .duration = 0.1};
    std::vector<double> samples = noisy_tone(tone, 6.0, 3);
    const double alone = clarity(samples, tone.hz);
    for (std::size_t i = 0; i < samples.size(); ++i) samples[i] += 1e-3 * static_cast<double>(i);
    EXPECT_LT(clarity(samples, tone.hz), alone + 0.5);
}

TEST(PitchOfNothingTest, SilenceConstantShortAndNotFiniteHaveNoPitch) {
    const auto range = pitch_range_around(220.0);
    EXPECT_FALSE(measure_pitch({}, 48000.0, range));
    EXPECT_FALSE(measure_pitch(std::vector<double>(4800, 0.0), 48000.0, range));
    EXPECT_FALSE(measure_pitch(std::vector<double>(4800, 0.3), 48000.0, range));
    EXPECT_FALSE(measure_pitch(std::vector<double>(4800, std::numeric_limits<double>::quiet_NaN()), 48000.0, range));
    EXPECT_FALSE(measure_pitch(std::vector<double>(100, 1.0), 1e6, range));
    const Tone under_two_periods{.hz = 220.0, .sample_rate = 48000.0, .duration = 0.006};
    EXPECT_FALSE(measure_pitch(tests::sawtooth(under_two_periods), 48000.0, {210.0, 230.0}));
}

TEST(PitchOfNothingTest, ToneOutsideTheRangeIsNotReportedAsInside) {
    const Tone tone{.hz = 220.0, .sample_rate = 48000.0, .duration = 0.1};
    const auto pitch = measure_pitch(tests::sawtooth(tone), tone.sample_rate, pitch_range_around(330.0, 2));
    EXPECT_LT(pitch ? pitch->clarity_db : -60.0, 3.0);
}

/// expects  the same bits in other threads, which make their own plans, and after other lengths were transformed
TEST(PitchThreadTest, ThreadsGiveTheSameBits) {
    const Tone tone{.hz = 196.3, .sample_rate = 251327.4, .duration = 0.1};
    const std::vector<double> samples = tests::sawtooth(tone);
    const auto range = pitch_range_around(tone.hz);
    const auto here = measure_pitch(samples, tone.sample_rate, range);
    std::vector<std::optional<Pitch>> there(8);
    {
        std::vector<std::jthread> threads;
        for (std::size_t k = 0; k < there.size(); ++k) {
            threads.emplace_back([&, k] {
                for (std::size_t shorter = 0; shorter < 12 + k; ++shorter) {
                    const std::span part(samples.data(), samples.size() - 997 * (shorter + k));
                    static_cast<void>(measure_pitch(part, tone.sample_rate, range));
                }
                there[k] = measure_pitch(samples, tone.sample_rate, range);
            });
        }
    }
    ASSERT_TRUE(here);
    for (const auto& pitch : there) EXPECT_EQ(pitch, here);
}

}  // namespace
