// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/match/heard_levels.hpp"
#include "sim/match/modelled_strokes.hpp"
#include "sim/match/period_pair.hpp"
#include "sim/match/region.hpp"
#include "sim/match/stop_candidates.hpp"
#include "sim/preset_reader.hpp"
#include "tests/analysis/tones.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>

namespace {

using namespace sim::match;

std::vector<double> hundred_places() { return sim::even_in_ratio({1.0, 100.0}, 101); }

/// expects  of an even weight the stretch whose log is that share of all
TEST(RegionTest, HoldsItsShareOfAnEvenWeight) {
    const std::vector<double> weights(101, 1.0);
    const Region region = shortest_region(hundred_places(), weights, 0.8);
    // the outermost values have half a step each
    EXPECT_NEAR(std::log(region.high / region.low) / std::log(100.0), 0.8, 0.01);
}

/// expects  of a bell the shortest stretch: 1.2816 standard deviations either side
TEST(RegionTest, LiesAboutABell) {
    const std::vector<double> places = hundred_places();
    constexpr double spread = 0.3;
    std::vector<double> weights;
    for (const double place : places) {
        const double away = std::log(place / 10.0) / spread;
        weights.push_back(std::exp(-0.5 * away * away));
    }
    const Region region = shortest_region(places, weights, 0.8);
    EXPECT_NEAR(std::log(region.low / 10.0), -1.2816 * spread, 0.03);
    EXPECT_NEAR(std::log(region.high / 10.0), 1.2816 * spread, 0.03);
}

/// expects  a single value's region to stay within half a step of it
TEST(RegionTest, OfOneValueIsHalfAStepEitherSide) {
    std::vector<double> weights(101, 0.0);
    weights[50] = 2.0;
    const Region region = shortest_region(hundred_places(), weights, 1.0);
    const double step = std::log(100.0) / 100.0;
    EXPECT_NEAR(std::log(region.low / 10.0), -0.5 * step, 1e-9);
    EXPECT_NEAR(std::log(region.high / 10.0), 0.5 * step, 1e-9);
}

/// expects  the same weight within the same bounds, on another grid
TEST(RegionTest, WeightsMoveOntoOtherValues) {
    const std::vector<double> places = hundred_places();
    std::vector<double> weights(places.size(), 0.0);
    for (std::size_t k = 30; k < 50; ++k) weights[k] = 0.05;
    const std::vector<double> onto = sim::even_in_ratio({0.5, 150.0}, 333);
    const std::vector<double> moved = moved_weights(places, weights, onto);
    EXPECT_NEAR(std::accumulate(moved.begin(), moved.end(), 0.0), 1.0, 1e-9);
    const Region before = shortest_region(places, weights, 0.9999);
    const Region after = shortest_region(onto, moved, 0.9999);
    EXPECT_NEAR(std::log(after.low / before.low), 0.0, 0.03);
    EXPECT_NEAR(std::log(after.high / before.high), 0.0, 0.03);
}

/// expects  G4 of a bass viol at 415 Hz on four strings: stops 5, 10, 15 and 19 (of D4, A3, E3, C3)
TEST(StopCandidatesTest, EveryStringThatHoldsThePitch) {
    const sim::Preset preset = sim::find_preset("division_bass_viol");
    const double g4 = sim::pitch_frequency("G4", 415.0) * analysis::ratio_from_semitones(0.2);
    const auto candidates = stop_candidates(preset, {}, g4);
    std::vector<double> stops;
    for (const StopCandidate& candidate : candidates) {
        stops.push_back(candidate.stop);
        EXPECT_NEAR(candidate.off_cents, 20.0, 0.1);
        EXPECT_NEAR(fundamental(candidate.note.string), sim::pitch_frequency("G4", 415.0), 0.1);
    }
    EXPECT_THAT(stops, testing::ElementsAre(5.0, 10.0, 15.0, 19.0));
    EXPECT_THAT(stop_candidates(preset, {.string = "2", .stop = {}, .end = {}}, g4), testing::SizeIs(1));
    EXPECT_THAT(stop_candidates(preset, {.string = "2", .stop = 3.0, .end = {}}, g4), testing::IsEmpty());
    EXPECT_THAT(stop_candidates(preset, {}, 50.0), testing::IsEmpty());
    EXPECT_EQ(held_range(preset, {.string = "1", .stop = {}, .end = {}}), "D4 to C6");
}

/// Spectra whose partials rise evenly with the contact point and scatter by a known deviation.
StrokeSpectra scattered_spectra(double deviation) {
    const sim::Preset preset = sim::find_preset("division_bass_viol");
    StrokeSpectra spectra{.note = make_note(preset, preset.strings.front(), 0.0),
                          .player = preset.player,
                          .contact_points = sim::even_in_ratio({0.02, 0.2}, 60),
                          .forces = sim::even_in_ratio({0.1, 0.4}, 8),
                          .strokes = {}};
    std::mt19937 engine(3);
    std::normal_distribution<double> normal(0.0, deviation);
    for (std::size_t x = 0; x < 60; ++x)
        for (std::size_t j = 0; j < 8; ++j) {
            StrokeSpectrum stroke{
                .motion = sim::Motion::helmholtz, .pitch = fundamental(spectra.note.string), .levels = {}};
            for (int n = 1; n <= 20; ++n)
                stroke.levels.push_back(-6.0 * n + 0.5 * static_cast<double>(x) + normal(engine));
            spectra.strokes.push_back(stroke);
        }
    return spectra;
}

/// expects  the scatter's variance, the even rise left out; strokes that are flat or in another motion left out
TEST(ModelledStrokesTest, MeasureTheScatterAmongNeighbours) {
    StrokeSpectra spectra = scattered_spectra(2.0);
    spectra.strokes[5].motion = sim::Motion::raucous;
    spectra.strokes[5].levels.clear();
    spectra.strokes[6].pitch *= analysis::ratio_from_semitones(-0.7);
    const auto strokes = modelled_strokes(spectra);
    EXPECT_EQ(strokes.size(), 60U * 8U - 2U);
    double sum = 0.0;
    double count = 0.0;
    for (const ModelledStroke& stroke : strokes)
        for (const double variance : stroke.variances) {
            sum += variance;
            count += 1.0;
        }
    EXPECT_NEAR(sum / count, 4.0, 0.2);
}

/// source   a shelf, (1 + i f/f2)/(1 + i f/f1), is of minimum phase: atan(f/f2) - atan(f/f1), derived
/// margin   0.08 rad: levels are known at whole partials alone, and level beyond the last
TEST(MinimumPhaseTest, IsThatOfAShelf) {
    std::vector<int> numbers(32);
    std::iota(numbers.begin(), numbers.end(), 1);
    std::vector<double> levels;
    for (const int n : numbers) levels.push_back(10.0 * std::log10((1.0 + n * n / 144.0) / (1.0 + n * n / 16.0)));
    const auto phases = minimum_phases({.numbers = numbers, .levels = levels});
    for (int n = 1; n <= 16; ++n)
        EXPECT_NEAR(phases[static_cast<std::size_t>(n - 1)], std::atan(n / 12.0) - std::atan(n / 4.0), 0.08) << n;
}

/// A tone with partials 1/n up to the 12th, in noise.
NoteSamples noisy_tone(double hz, double noise) {
    NoteSamples part{.signal = {.samples = tests::harmonic_tone({.hz = hz, .sample_rate = 48000.0, .duration = 1.0},
                                                                [](int n) { return n <= 12 ? 0.1 / n : 0.0; }),
                                .sample_rate = 48000.0}};
    std::mt19937 engine(5);
    std::normal_distribution<double> normal(0.0, noise);
    for (double& sample : part.signal.samples) sample += normal(engine);
    return part;
}

/// expects  -20 dB - 20 log10 n, and what is noise alone to be told
/// margin   0.5 dB; of 32 partials of noise alone at most one stands 6 dB out
TEST(HeardLevelsTest, AreThePartialsAndNotTheNoise) {
    const NoteSamples part = noisy_tone(200.0, 0.001);
    const auto tone = analysis::measure_tone(part.signal.samples, 48000.0);
    ASSERT_TRUE(tone);
    const auto levels = heard_levels(part, *tone);
    ASSERT_GE(levels.size(), 40U);
    int noise_taken = 0;
    for (const HeardLevel& level : levels) {
        if (level.number <= 12) {
            EXPECT_TRUE(level.usable) << level.number;
            EXPECT_NEAR(level.level, -20.0 - 20.0 * std::log10(level.number), 0.5) << level.number;
        } else if (level.usable) {
            ++noise_taken;
        }
    }
    EXPECT_LE(noise_taken, 1);
}

}  // namespace
