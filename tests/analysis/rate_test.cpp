// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/decimate.hpp"
#include "analysis/level.hpp"
#include "analysis/pitch.hpp"
#include "analysis/resample.hpp"
#include "analysis/spectrum.hpp"
#include "analysis/units.hpp"
#include "tests/analysis/tones.hpp"

#include <gtest/gtest.h>

namespace {

using analysis::Signal;
using tests::Tone;

/// 0 dB for a sine of amplitude 1.
double level_db(std::span<const double> samples) {
    return analysis::db_from_ratio(analysis::rms(samples) * std::sqrt(2.0));
}

class DecimateTest : public testing::TestWithParam<int> {};

INSTANTIATE_TEST_SUITE_P(ManyFactors, DecimateTest, testing::Values(2, 3, 5, 20));

/// expects  a sine below 0.4 of the new rate unchanged, sample for sample, 16 factor samples later in the record
/// margin   0.001 dB = 1.2e-4
TEST_P(DecimateTest, PassesWhatLiesBelowFourTenthsOfTheNewRate) {
    const int factor = GetParam();
    for (const double fraction : {0.01, 0.2, 0.4}) {
        const Tone tone{.hz = fraction * 48000.0, .sample_rate = 48000.0 * factor, .duration = 0.05, .max_hz = 1e6};
        const std::vector<double> samples = tests::harmonic_tone(tone, [](int n) { return n == 1 ? 1.0 : 0.0; });
        const Signal less = analysis::decimate(samples, tone.sample_rate, factor);
        ASSERT_EQ(less.samples.size(), 2400U - 32U);
        EXPECT_DOUBLE_EQ(less.sample_rate, 48000.0);
        for (std::size_t k = 0; k < less.samples.size(); ++k) {
            ASSERT_NEAR(less.samples[k], samples[(k + 16) * static_cast<std::size_t>(factor)], 1.2e-4) << k;
        }
    }
}

/// expects  what would fold to below 0.4 of the new rate to be 95 dB down
TEST_P(DecimateTest, RejectsWhatWouldFoldBack) {
    const int factor = GetParam();
    for (const double fraction : {0.6, 0.7, 0.95}) {
        const Tone tone{.hz = fraction * 48000.0, .sample_rate = 48000.0 * factor, .duration = 0.05, .max_hz = 47999.0};
        const Signal less = analysis::decimate(tests::sine(tone), tone.sample_rate, factor);
        EXPECT_LT(level_db(less.samples), -95.0) << fraction;
    }
}

/// expects  the same bits a sample at a time as all at once, from where the filter is full
TEST_P(DecimateTest, WithoutAnEndIsTheSame) {
    const int factor = GetParam();
    const std::vector<double> samples =
        tests::sawtooth({.hz = 441.0, .sample_rate = 48000.0 * factor, .duration = 0.01});
    const Signal whole = analysis::decimate(samples, 48000.0 * factor, factor);
    ASSERT_GT(whole.samples.size(), 400U);
    analysis::Decimator decimator(factor);
    const auto filter = static_cast<std::size_t>(32 * factor + 1);
    for (std::size_t i = 0; i < samples.size(); ++i) {
        decimator.push(samples[i]);
        if (i + 1 < filter || (i + 1 - filter) % static_cast<std::size_t>(factor) != 0) continue;
        ASSERT_EQ(decimator.output(), whole.samples[(i + 1 - filter) / static_cast<std::size_t>(factor)]) << i;
    }
}

TEST(DecimateTest, FactorLeavesAtLeastTheRateAskedFor) {
    EXPECT_EQ(analysis::decimation_factor(48000.0, 48000.0), 1);
    EXPECT_EQ(analysis::decimation_factor(95999.0, 48000.0), 1);
    EXPECT_EQ(analysis::decimation_factor(96000.0, 48000.0), 2);
    EXPECT_EQ(analysis::decimation_factor(1e6, 48000.0), 20);
    EXPECT_EQ(analysis::decimation_factor(8000.0, 48000.0), 1);
}

TEST(DecimateTest, RecordShorterThanTheFilterGivesNothing) {
    EXPECT_TRUE(analysis::decimate(std::vector<double>(64, 1.0), 96000.0, 2).samples.empty());
    EXPECT_EQ(analysis::decimate(std::vector<double>(65, 1.0), 96000.0, 2).samples.size(), 1U);
}

class ResampleTest : public testing::TestWithParam<double> {};

INSTANTIATE_TEST_SUITE_P(ManyRates, ResampleTest, testing::Values(44100.0, 60000.0, 251327.4, 1e6));

/// expects  length × ratio, the same level and the same pitch
/// margin   0.01 dB and 0.05 cent in the middle, away from the ends that the filter smears
TEST_P(ResampleTest, KeepsPitchAndLevelOfASine) {
    const Tone tone{.hz = 196.0, .sample_rate = GetParam(), .duration = 0.5};
    const Signal sound = analysis::resample({tests::sine(tone), tone.sample_rate}, 48000.0);
    ASSERT_EQ(sound.samples.size(), 24000U);
    EXPECT_EQ(sound.sample_rate, 48000.0);
    const std::span middle(sound.samples.data() + 2400, 12000);  // 49 whole periods
    EXPECT_NEAR(level_db(middle), 0.0, 0.01);
    const auto pitch = analysis::measure_pitch(middle, sound.sample_rate, analysis::pitch_range_around(200.0));
    ASSERT_TRUE(pitch);
    EXPECT_NEAR(analysis::cents_between(pitch->hz, 196.0), 0.0, 0.05);
}

TEST(ResampleTest, RejectsWhatWouldFoldBack) {
    const Tone tone{.hz = 30000.0, .sample_rate = 192000.0, .duration = 0.2, .max_hz = 40000.0};
    const Signal sound = analysis::resample({tests::sine(tone), tone.sample_rate}, 48000.0);
    EXPECT_LT(level_db(std::span(sound.samples).subspan(960, 7680)), -90.0);
}

TEST(ResampleTest, OfNothingIsNothing) { EXPECT_TRUE(analysis::resample({{}, 44100.0}, 48000.0).samples.empty()); }

TEST(SpectrumTest, OfACosineStandsInItsBinAndComesBack) {
    std::vector<double> samples(60);
    for (std::size_t j = 0; j < samples.size(); ++j) {
        samples[j] = std::cos(2.0 * std::numbers::pi * 7.0 * static_cast<double>(j) / 60.0);
    }
    const auto bins = analysis::spectrum(samples, 60);
    ASSERT_EQ(bins.size(), 31U);
    for (std::size_t k = 0; k < bins.size(); ++k) EXPECT_NEAR(std::abs(bins[k]), k == 7 ? 30.0 : 0.0, 1e-12) << k;
    const auto back = analysis::inverse_spectrum(bins, 60);
    for (std::size_t j = 0; j < samples.size(); ++j) EXPECT_NEAR(back[j], samples[j], 1e-14);
}

/// expects  1·1 + 2·2 + 3·3, 1·2 + 2·3, 1·3
TEST(SpectrumTest, AutocorrelationIsTheSumOfProducts) {
    const auto sums = analysis::autocorrelation(std::vector<double>{1.0, 2.0, 3.0}, 2);
    ASSERT_EQ(sums.size(), 3U);
    EXPECT_NEAR(sums[0], 14.0, 1e-12);
    EXPECT_NEAR(sums[1], 8.0, 1e-12);
    EXPECT_NEAR(sums[2], 3.0, 1e-12);
}

TEST(SpectrumTest, FastLengthsAreEvenAndHaveSmallFactors) {
    EXPECT_EQ(analysis::fast_length(0), 2U);
    EXPECT_EQ(analysis::fast_length(16), 16U);
    EXPECT_EQ(analysis::fast_length(17), 18U);
    EXPECT_EQ(analysis::fast_length(4801), 4860U);
}

}  // namespace
