// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/recording.hpp"
#include "analysis/units.hpp"
#include "tests/analysis/tones.hpp"
#include "tests/external/judges.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace {

using analysis::cents_between;
constexpr double rate = 48000.0;

/// Strokes of a sawtooth with soft beginnings and ends, some of the same pitch, over faint noise.
struct Strokes {
    analysis::Signal sound;
    std::vector<double> onsets;  // s
};
Strokes strokes_with_gaps() {
    std::mt19937 engine(11);
    Strokes strokes{.sound = {std::vector<double>(static_cast<std::size_t>(6.5 * rate)), rate}, .onsets = {}};
    const std::vector<double> pitches{196.0, 196.0, 220.0, 246.9, 246.9, 293.7, 330.0, 440.0, 440.0, 587.3};
    for (std::size_t i = 0; i < pitches.size(); ++i) {
        const double from = 0.3 + 0.6 * static_cast<double>(i);
        strokes.onsets.push_back(from);
        const auto tone = tests::sawtooth({.hz = pitches[i], .sample_rate = rate, .duration = 0.5, .max_hz = 8000.0});
        for (std::size_t j = 0; j < tone.size(); ++j) {
            const double t = static_cast<double>(j) / rate;
            const double gain = std::min({1.0, t / 0.02, (0.5 - t) / 0.05});
            strokes.sound.samples[static_cast<std::size_t>(from * rate) + j] += 0.2 * gain * tone[j];
        }
    }
    for (double& sample : strokes.sound.samples) sample += 1e-4 * (static_cast<double>(engine()) / 2147483648.0 - 1.0);
    return strokes;
}

/// source   aubioonset, its usual settings
/// expects  each of ten onsets, five of them of the pitch before or after a leap, within 25 ms of where it was made and
///          of where the other program hears it
/// margin   25 ms
TEST(ExternalOnsetTest, OnsetsAreWhereAubioHearsThem) {
    const Strokes strokes = strokes_with_gaps();
    const auto recording = analysis::analyse_sound(strokes.sound.samples, rate, {});
    const std::vector<double> aubio = tests::aubio_onsets(strokes.sound);
    ASSERT_EQ(recording.notes.size(), strokes.onsets.size());
    ASSERT_FALSE(aubio.empty());
    double worst = 0.0;
    double worst_made = 0.0;
    for (std::size_t i = 0; i < strokes.onsets.size(); ++i) {
        const double start = recording.notes[i].span.start;
        const auto nearest = std::ranges::min(aubio, {}, [&](double time) { return std::abs(time - start); });
        worst = std::max(worst, std::abs(nearest - start));
        worst_made = std::max(worst_made, std::abs(strokes.onsets[i] - start));
    }
    std::printf("onsets: greatest distance from aubioonset %.1f ms, from the truth %.1f ms\n", 1e3 * worst,
                1e3 * worst_made);
    EXPECT_LE(worst, 0.025);
    EXPECT_LE(worst_made, 0.025);
}

/// source   Praat, as in bank_test
/// expects  a tone in white noise of known ratio: 10, 20, 30 dB
/// margin   2 dB between the programs
TEST(ExternalToneTest, HarmonicToNoiseRatioIsPraats) {
    std::mt19937 engine(3);
    std::normal_distribution<double> normal;
    for (const double snr : {10.0, 20.0, 30.0}) {
        analysis::Signal sound{tests::sawtooth({.hz = 220.0, .sample_rate = rate, .duration = 1.0, .max_hz = 9000.0}),
                               rate};
        double power = 0.0;
        for (const double sample : sound.samples) power += sample * sample / static_cast<double>(sound.samples.size());
        for (double& sample : sound.samples)
            sample = 0.2 * (sample + std::sqrt(power) * analysis::ratio_from_db(-snr) * normal(engine));
        const auto tone = analysis::measure_tone(sound.samples, rate);
        ASSERT_TRUE(tone);
        const tests::PraatTone praat = tests::praat_tone(sound, {.near_hz = 220.0, .bands_hz = 220.0});
        std::printf("tone/noise %.0f dB: %.2f, Praat %.2f\n", snr, tone->clarity_db, praat.hnr_db);
        EXPECT_NEAR(tone->clarity_db, praat.hnr_db, 2.0) << snr;
        EXPECT_NEAR(tone->hz / praat.hz, 1.0, 1e-3);
    }
}

}  // namespace
