// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/sound/render.hpp"

#include "analysis/level.hpp"
#include "analysis/pitch.hpp"
#include "analysis/units.hpp"
#include "tests/analysis/tones.hpp"

#include <gtest/gtest.h>

namespace {

using analysis::Signal;
using sim::sound::RadiatingMode;
using tests::Tone;

constexpr double rate = 250000.0;

std::vector<RadiatingMode> three_modes() { return {{105.0, 25.0, 1.0}, {830.0, 40.0, -0.6}, {2400.0, 30.0, 0.4}}; }

/// RMS over the last 0.1 s, where the filters have settled.
double settled_level(const Signal& sound) {
    return analysis::rms(std::span(sound.samples).last(4800 + 1200).first(4800));
}

/// source   the band-pass (w/Q) s / (s² + (w/Q) s + w²): 1 at w, ±3 dB points at sqrt(1 + 1/4Q²) ± 1/2Q
TEST(SoundResponseTest, OfOneModeIsItsRadiationAtItsFrequencyAndHalfThePowerAtTheEdges) {
    const std::vector<RadiatingMode> modes{{400.0, 20.0, -0.7}};
    EXPECT_NEAR(std::abs(sim::sound::response(modes, 400.0) - std::complex<double>(-0.7)), 0.0, 1e-12);
    const double middle = std::sqrt(1.0 + 1.0 / 1600.0);
    for (const double x : {middle - 0.025, middle + 0.025}) {
        EXPECT_NEAR(std::abs(sim::sound::response(modes, 400.0 * x)), 0.7 / std::sqrt(2.0), 1e-12);
    }
    EXPECT_EQ(std::abs(sim::sound::response(modes, 0.0)), 0.0);
}

TEST(SoundResponseTest, WithoutModesIsOne) { EXPECT_EQ(sim::sound::response({}, 440.0), 1.0); }

class RenderTest : public testing::TestWithParam<double> {};

INSTANTIATE_TEST_SUITE_P(ManyFrequencies, RenderTest,
                         testing::Values(70.0, 105.0, 196.0, 300.0, 830.0, 1000.0, 2400.0, 4000.0));

/// expects  |response| times the force
/// margin   0.1 dB up to the highest mode.  Above it the bilinear transform bends x = f/2400 Hz upwards by
///          tan(pi f/r)/(pi f/r) over the same at the mode: 1.5 % at 4 kHz, and x/(x² - 1) falls by
///          (x² + 1)/(x² - 1) = 2.1 times that, 0.28 dB
TEST_P(RenderTest, SineComesOutAsTheResponseSays) {
    const Tone tone{.hz = GetParam(), .sample_rate = rate, .duration = 1.0};
    const auto modes = three_modes();
    const Signal sound = sim::sound::render({tests::sine(tone), rate}, modes);
    EXPECT_EQ(sound.sample_rate, 48000.0);
    EXPECT_EQ(sound.samples.size(), 48000U);
    const double expected = std::abs(sim::sound::response(modes, tone.hz)) / std::sqrt(2.0);
    const double margin = tone.hz > 2400.0 ? 0.3 : 0.1;
    EXPECT_NEAR(analysis::db_from_ratio(settled_level(sound) / expected), 0.0, margin);
}

/// expects  the level that the list of notes shows is the level that is heard
/// margin   0.1 dB
TEST(RenderTest, LevelOfTheSoundIsTheWeightedLevelOfTheForce) {
    const Tone tone{.hz = 146.8, .sample_rate = rate, .duration = 1.0};
    const std::vector<double> force = tests::sawtooth(tone);
    const auto modes = three_modes();
    const Signal sound = sim::sound::render({force, rate}, modes);
    const double level = analysis::weighted_rms(std::span(force).last(50000), rate,
                                                [&](double hz) { return std::abs(sim::sound::response(modes, hz)); });
    EXPECT_NEAR(analysis::db_from_ratio(settled_level(sound) / level), 0.0, 0.1);
}

TEST(RenderTest, WithoutModesTheForceItselfIsHeardWithoutItsMean) {
    const Tone tone{.hz = 200.0, .sample_rate = rate, .duration = 0.5, .offset = 3.0};
    const Signal sound = sim::sound::render({tests::sine(tone), rate}, {});
    EXPECT_NEAR(settled_level(sound), 1.0 / std::sqrt(2.0), 1e-3);
    double sum = 0.0;
    for (const double sample : sound.samples) sum += sample;
    EXPECT_NEAR(sum / 24000.0, 0.0, 1e-9);
}

TEST(RenderTest, ModesTooHighForTheSoundAreLeftOut) {
    const Tone tone{.hz = 200.0, .sample_rate = rate, .duration = 0.2};
    const Signal force{tests::sawtooth(tone), rate};
    auto modes = three_modes();
    const Signal without = sim::sound::render(force, modes);
    modes.push_back({21700.0, 10.0, 1.0});
    EXPECT_EQ(sim::sound::render(force, modes), without);
}

TEST(RenderTest, KeepsThePitch) {
    const Tone tone{.hz = 196.3, .sample_rate = 251327.4, .duration = 0.5};
    const auto modes = three_modes();
    const Signal sound = sim::sound::render({tests::sawtooth(tone), tone.sample_rate}, modes);
    const auto pitch =
        analysis::measure_pitch(std::span(sound.samples).last(4800), 48000.0, analysis::pitch_range_around(200.0));
    ASSERT_TRUE(pitch);
    EXPECT_NEAR(analysis::cents_between(pitch->hz, tone.hz), 0.0, 0.5);
}

TEST(RadiatingModesTest, AreTheBridgesModesThatSound) {
    const sim::Bridge bridge{.kind = sim::BridgeKind::modes,
                             .modes = {{.frequency = 105.0, .q = 25.0, .mass = 0.3, .radiation = 1.0},
                                       {.frequency = 400.0, .q = 30.0, .mass = 0.2, .radiation = 0.0},
                                       {.frequency = 830.0, .q = 40.0, .mass = 0.1, .radiation = -0.5}}};
    const std::vector<RadiatingMode> expected{{105.0, 25.0, 1.0}, {830.0, 40.0, -0.5}};
    EXPECT_EQ(sim::sound::radiating_modes(bridge), expected);
    const sim::Bridge resistance{.kind = sim::BridgeKind::resistance, .resistance = 20.0, .modes = {}};
    EXPECT_TRUE(sim::sound::radiating_modes(resistance).empty());
    EXPECT_TRUE(sim::sound::radiating_modes({}).empty());
}

/// expects  half a cosine over 240 samples up and 1440 down, untouched between
TEST(FadeTest, EndsAreRaisedAndLoweredByHalfACosine) {
    Signal sound{std::vector<double>(48000, 1.0), 48000.0};
    sim::sound::fade_ends(sound);
    EXPECT_LT(sound.samples.front(), 2e-5);
    EXPECT_LT(sound.samples.back(), 2e-6);
    EXPECT_NEAR(sound.samples[119] + sound.samples[120], 1.0, 1e-12);
    EXPECT_NEAR(sound.samples[48000 - 720] + sound.samples[48000 - 721], 1.0, 1e-12);
    EXPECT_LT(sound.samples[239], 1.0);
    EXPECT_EQ(sound.samples[240], 1.0);
    EXPECT_EQ(sound.samples[48000 - 1441], 1.0);
    EXPECT_LT(sound.samples[48000 - 1440], 1.0);
}

TEST(FadeTest, ShortSoundsAreFadedInProportion) {
    Signal sound{std::vector<double>(70, 1.0), 48000.0};
    sim::sound::fade_ends(sound);
    EXPECT_LT(sound.samples.front(), 0.01);
    EXPECT_LT(sound.samples.back(), 0.01);
    EXPECT_GT(sound.samples[9], 0.9);
    Signal nothing{{}, 48000.0};
    sim::sound::fade_ends(nothing);
    EXPECT_TRUE(nothing.samples.empty());
}

/// expects  joint peak 10^(-6/20) = 0.501187
TEST(GainTest, IsSharedSoThatRelativeLevelsStayAndThePeakIsSafe) {
    std::vector<Signal> takes{{{0.1, -0.2}, 48000.0}, {{4.0, -1.0}, 48000.0}};
    const double gain = sim::sound::share_gain(takes);
    EXPECT_NEAR(gain, 0.501187 / 4.0, 1e-6);
    EXPECT_NEAR(takes[1].samples[0], 0.501187, 1e-6);
    EXPECT_DOUBLE_EQ(takes[0].samples[1], -0.2 * gain);
}

TEST(GainTest, LeavesSilenceAlone) {
    std::vector<Signal> takes{{{0.0, 0.0}, 48000.0}};
    EXPECT_EQ(sim::sound::share_gain(takes), 1.0);
    EXPECT_EQ(takes.front(), (Signal{{0.0, 0.0}, 48000.0}));
}

TEST(ConcatenateTest, PutsSilenceBetweenAndNowhereElse) {
    const std::vector<Signal> takes{{{1.0, 2.0}, 1000.0}, {{3.0}, 1000.0}, {{4.0}, 1000.0}};
    const Signal expected{{1.0, 2.0, 0.0, 0.0, 3.0, 0.0, 0.0, 4.0}, 1000.0};
    EXPECT_EQ(sim::sound::concatenate(takes, 0.002), expected);
}

}  // namespace
