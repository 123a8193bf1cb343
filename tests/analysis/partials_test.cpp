// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/partials.hpp"

#include "analysis/pitch.hpp"
#include "analysis/units.hpp"
#include "tests/analysis/tones.hpp"

#include <gtest/gtest.h>

namespace {

using analysis::measure_partials;
using analysis::Partial;
using tests::Tone;

class PartialsTest : public testing::TestWithParam<Tone> {};

INSTANTIATE_TEST_SUITE_P(ManyNotesAndRates, PartialsTest,
                         testing::Values(Tone{.hz = 73.42, .sample_rate = 60000.0, .duration = 0.1},
                                         Tone{.hz = 196.3, .sample_rate = 251327.4, .duration = 0.1},
                                         Tone{.hz = 440.0, .sample_rate = 44100.0, .duration = 0.1},
                                         Tone{.hz = 829.8, .sample_rate = 1e6, .duration = 0.1, .offset = 5.0},
                                         Tone{.hz = 2349.3, .sample_rate = 192000.0, .duration = 0.05}));

/// expects  amplitude 1/n, as the tone was made
/// margin   0.05 dB; the low-pass gives 0.001 dB, the rest is the other side of the spectrum and the pitch's error
TEST_P(PartialsTest, SawtoothHasHarmonicsOneOverNAtItsMeasuredPitch) {
    const Tone tone = GetParam();
    const std::vector<double> samples = tests::sawtooth(tone);
    const auto pitch = analysis::measure_pitch(samples, tone.sample_rate, analysis::pitch_range_around(tone.hz));
    ASSERT_TRUE(pitch);
    const auto partials = measure_partials(samples, tone.sample_rate, {pitch->hz, 8000.0});
    ASSERT_EQ(partials.size(), static_cast<std::size_t>(8000.0 / tone.hz));
    for (std::size_t k = 0; k < partials.size(); ++k) {
        const double n = static_cast<double>(k) + 1.0;
        EXPECT_DOUBLE_EQ(partials[k].hz, n * pitch->hz);
        EXPECT_NEAR(analysis::db_from_ratio(partials[k].amplitude * n), 0.0, 0.05) << "harmonic " << n;
    }
}

/// expects  nothing where there is nothing: the window's zeros lie on the other harmonics
TEST(PartialsTest, MissingHarmonicsStayMissing) {
    const Tone tone{.hz = 196.3, .sample_rate = 251327.4, .duration = 0.1, .offset = 1.0};
    const auto samples = tests::harmonic_tone(tone, [](int n) { return n % 3 == 0 ? 0.0 : 1.0 / n; });
    const auto partials = measure_partials(samples, tone.sample_rate, {tone.hz, 8000.0});
    for (std::size_t k = 2; k < partials.size(); k += 3) EXPECT_LT(partials[k].amplitude, 1e-5) << k + 1;
}

TEST(PartialsTest, UnderTwoPeriodsGiveNothing) {
    const Tone tone{.hz = 100.0, .sample_rate = 48000.0, .duration = 0.019};
    EXPECT_TRUE(measure_partials(tests::sawtooth(tone), tone.sample_rate, {tone.hz, 8000.0}).empty());
    EXPECT_TRUE(measure_partials({}, tone.sample_rate, {tone.hz, 8000.0}).empty());
}

TEST(PartialsTest, HighestHarmonicIsIncludedWhenItLiesOnTheLimit) {
    const Tone tone{.hz = 200.0, .sample_rate = 48000.0, .duration = 0.1};
    EXPECT_EQ(measure_partials(tests::sawtooth(tone), tone.sample_rate, {tone.hz, 8000.0}).size(), 40U);
}

/// source   N harmonics 1/n: sum n f0/n = N f0, sum 1/n = the harmonic number H_N; centroid N f0/H_N
/// expects  N = 40, H_40 = 4.2785430389
TEST(BrightnessTest, OfASawtoothIsTheClosedForm) {
    std::vector<Partial> partials;
    for (int n = 1; n <= 40; ++n) partials.push_back({200.0 * n, 0.3 / n});
    const auto brightness = analysis::brightness(partials, 200.0);
    ASSERT_TRUE(brightness);
    EXPECT_NEAR(brightness->brightness_f0, 40.0 / 4.2785430389, 1e-8);
    EXPECT_NEAR(brightness->centroid_hz, 200.0 * 40.0 / 4.2785430389, 1e-6);
}

/// source   amplitudes q^n: sum n q^n / sum q^n -> 1/(1 - q)
TEST(BrightnessTest, OfAGeometricSeriesIsTheClosedForm) {
    std::vector<Partial> partials;
    for (int n = 1; n <= 70; ++n) partials.push_back({100.0 * n, std::pow(0.5, n)});
    EXPECT_NEAR(analysis::brightness(partials, 100.0)->brightness_f0, 2.0, 1e-12);
}

TEST(BrightnessTest, IgnoresPartialsAboveTheLimit) {
    const std::vector<Partial> partials{{1000.0, 1.0}, {8000.0, 1.0}, {9000.0, 100.0}};
    EXPECT_DOUBLE_EQ(analysis::brightness(partials, 1000.0)->centroid_hz, 4500.0);
}

TEST(BrightnessTest, OfSilenceIsNothing) {
    EXPECT_FALSE(analysis::brightness({}, 100.0));
    EXPECT_FALSE(analysis::brightness(std::vector<Partial>{{100.0, 0.0}}, 100.0));
}

}  // namespace
