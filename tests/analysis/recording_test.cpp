// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/recording.hpp"
#include "analysis/audio_file.hpp"
#include "analysis/errors.hpp"
#include "analysis/recording_warnings.hpp"
#include "tests/analysis/temporary_folder.hpp"
#include "tests/analysis/tones.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace {

using analysis::analyse_sound;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
constexpr double rate = 48000.0;

/// Adds a stroke of a sawtooth, its ends soft.
struct Stroke {
    double from;  // s
    double to;    // s
    double hz;
    double amplitude = 0.2;
};
void add(std::vector<double>& sound, const Stroke& stroke) {
    const auto tone =
        tests::sawtooth({.hz = stroke.hz, .sample_rate = rate, .duration = stroke.to - stroke.from, .max_hz = 9000.0});
    const auto first = static_cast<std::size_t>(stroke.from * rate);
    for (std::size_t j = 0; j < tone.size(); ++j) {
        const double t = static_cast<double>(j) / rate;
        const double gain = std::clamp(std::min(t / 0.02, (stroke.to - stroke.from - t) / 0.04), 0.0, 1.0);
        sound[first + j] += stroke.amplitude * gain * tone[j];
    }
}

std::vector<double> quiet(double seconds, double noise = 1e-5) {
    std::mt19937 engine(1);
    std::normal_distribution<double> normal;
    std::vector<double> sound(static_cast<std::size_t>(seconds * rate));
    for (double& sample : sound) sample = noise * normal(engine);
    return sound;
}

std::vector<double> pitches(const analysis::Recording& recording) {
    std::vector<double> result;
    for (const auto& note : recording.notes) result.push_back(note.tone ? note.tone->hz : 0.0);
    return result;
}

auto near(double hz) { return testing::DoubleNear(hz, 0.001 * hz); }

/// expects  onset, steady part and end of a note within 15 ms (three points of the track)
TEST(RecordingTest, FindsOnsetSteadyPartAndRelease) {
    auto sound = quiet(2.0);
    add(sound, {.from = 0.5, .to = 1.5, .hz = 220.0});
    const auto recording = analyse_sound(sound, rate, {});
    ASSERT_EQ(recording.notes.size(), 1U);
    const analysis::NoteSpan& span = recording.notes[0].span;
    EXPECT_NEAR(span.start, 0.5, 0.015);
    EXPECT_NEAR(span.steady_to, 1.48, 0.02);
    EXPECT_NEAR(span.end, 1.5, 0.015);
    EXPECT_THAT(recording.warnings, IsEmpty());
    ASSERT_TRUE(recording.notes[0].clean_after);
    EXPECT_LT(*recording.notes[0].clean_after, 0.05);
}

/// expects  the same pitch bowed three times without a pause to be three notes; slurred steps to be split by pitch
TEST(RecordingTest, SplitsRepeatedAndSlurredNotes) {
    auto repeated = quiet(2.5);
    for (const double from : {0.2, 0.9, 1.6}) add(repeated, {.from = from, .to = from + 0.7, .hz = 196.0});
    EXPECT_THAT(pitches(analyse_sound(repeated, rate, {})),
                testing::ElementsAre(near(196.0), near(196.0), near(196.0)));
    std::vector<double> slurred = quiet(2.0);
    double phase = 0.0;
    for (std::size_t j = 0; j < slurred.size(); ++j) {
        const double t = static_cast<double>(j) / rate;
        phase += (t < 0.6 ? 220.0 : t < 1.3 ? 246.94 : 233.08) / rate;
        for (int n = 1; n < 20; ++n) slurred[j] += 0.1 / n * std::sin(2.0 * std::numbers::pi * n * phase);
    }
    EXPECT_THAT(pitches(analyse_sound(slurred, rate, {})),
                testing::ElementsAre(near(220.0), near(246.94), near(233.08)));
}

/// expects  vibrato of 40 cents either way to stay one note, at its middle pitch
TEST(RecordingTest, VibratoIsOneNote) {
    auto sound = quiet(2.0);
    double phase = 0.0;
    for (std::size_t j = 0; j < sound.size(); ++j) {
        const double t = static_cast<double>(j) / rate;
        phase += 330.0 * std::exp2(40.0 / 1200.0 * std::sin(2.0 * std::numbers::pi * 5.5 * t)) / rate;
        for (int n = 1; n < 20; ++n) sound[j] += 0.1 / n * std::sin(2.0 * std::numbers::pi * n * phase);
    }
    const auto recording = analyse_sound(sound, rate, {});
    EXPECT_THAT(pitches(recording), testing::ElementsAre(testing::DoubleNear(330.0, 1.5)));
    EXPECT_GT(recording.notes.at(0).tone->stability, 20.0);
}

TEST(RecordingTest, SaysSilence) {
    EXPECT_THAT(analyse_sound(std::vector<double>(96000), rate, {}).warnings, Contains(HasSubstr("Silence")));
    EXPECT_THAT(analyse_sound(quiet(1.0), rate, {}).warnings, Contains(HasSubstr("Silence")));
}

TEST(RecordingTest, SaysClipping) {
    auto sound = quiet(1.5);
    add(sound, {.from = 0.2, .to = 1.2, .hz = 220.0, .amplitude = 1.5});
    for (double& sample : sound) sample = std::clamp(sample, -1.0, 1.0);
    const auto recording = analyse_sound(sound, rate, {});
    EXPECT_GT(recording.clipped, 100);
    EXPECT_GT(recording.notes.at(0).clipped, 100);
    EXPECT_THAT(recording.warnings, Contains(HasSubstr("Clipped")));
}

/// expects  two strings at once to be told, a fifth nearly pure or a third, and one alone not
TEST(RecordingTest, SaysTwoNotesAtOnce) {
    for (const double upper : {294.0, 247.2}) {
        auto sound = quiet(1.5);
        add(sound, {.from = 0.2, .to = 1.2, .hz = 196.0, .amplitude = 0.1});
        add(sound, {.from = 0.2, .to = 1.2, .hz = upper, .amplitude = 0.1});
        EXPECT_THAT(analyse_sound(sound, rate, {}).warnings, Contains(HasSubstr("Two notes"))) << upper;
    }
    auto one = quiet(1.5);
    add(one, {.from = 0.2, .to = 1.2, .hz = 196.0});
    EXPECT_THAT(analyse_sound(one, rate, {}).warnings, IsEmpty());
}

TEST(RecordingTest, SaysNoise) {
    EXPECT_THAT(analyse_sound(quiet(1.0, 0.1), rate, {}).warnings, Contains(HasSubstr("noise")));
    auto sound = quiet(2.0, 0.01);
    add(sound, {.from = 0.5, .to = 1.5, .hz = 220.0, .amplitude = 0.1});
    EXPECT_THAT(analyse_sound(sound, rate, {}).warnings, Contains(HasSubstr("Noisy")));
}

/// expects  channels that cancel to be told, and a file read like the same samples at hand
TEST(RecordingTest, ReadsFilesOfOneOrTwoChannels) {
    const tests::TemporaryFolder folder;
    auto sound = quiet(1.5);
    add(sound, {.from = 0.2, .to = 1.2, .hz = 220.0});
    std::vector<double> turned = sound;
    for (double& sample : turned) sample = -0.95 * sample;
    analysis::write_audio(folder / "a.wav", analysis::Audio{{sound, sound}, rate});
    analysis::write_audio(folder / "b.wav", analysis::Audio{{sound, turned}, rate});
    EXPECT_THAT(pitches(analysis::analyse_file(folder / "a.wav", {})), testing::ElementsAre(near(220.0)));
    EXPECT_THAT(analysis::analyse_file(folder / "b.wav", {}).warnings, Contains(HasSubstr("cancel")));
    analysis::write_audio(folder / "c.wav", analysis::Audio{std::vector<std::vector<double>>(8, sound), rate});
    EXPECT_THROW(analysis::analyse_file(folder / "c.wav", {}), analysis::InputError);
}

}  // namespace
