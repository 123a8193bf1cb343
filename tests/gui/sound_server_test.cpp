// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/gui/sound_server.hpp"

#include "analysis/level.hpp"
#include "analysis/pitch.hpp"
#include "analysis/units.hpp"
#include "gui/sound/listening.hpp"
#include "gui/sound/live_bow.hpp"
#include "sim/stroke.hpp"
#include "tests/analysis/tones.hpp"

#include <QCoreApplication>

#include <gtest/gtest.h>

#include <algorithm>
#include <memory>
#include <optional>

namespace {

using gui::LiveBow;
using gui::LiveHearing;
using tests::SoundServer;
using tests::wait_for;

constexpr double rate = 48000.0;

/// A server for all tests of the program.
class SoundServerTest : public testing::Test {
protected:
    static void SetUpTestSuite() {
        static int count = 1;
        static char name[] = "sound_server_test";
        static char* names[] = {name, nullptr};
        if (QCoreApplication::instance() == nullptr) app = std::make_unique<QCoreApplication>(count, names);
        server = std::make_unique<SoundServer>();
    }
    static void TearDownTestSuite() {
        server.reset();
        app.reset();
    }
    void SetUp() override {
        if (!server->trouble().empty()) GTEST_SKIP() << server->trouble();
    }

    inline static std::unique_ptr<QCoreApplication> app;
    inline static std::unique_ptr<SoundServer> server;
};

double median(std::vector<double> values) {
    std::ranges::sort(values);
    return values.empty() ? 0.0 : values[values.size() / 2];
}

/// Stretches of 0.1 s: a busy machine may lose the thread of one.
std::vector<std::span<const double>> stretches(std::span<const double> samples) {
    std::vector<std::span<const double>> all;
    for (std::size_t at = 0; at + 4800 <= samples.size(); at += 4800) all.push_back(samples.subspan(at, 4800));
    return all;
}

double median_pitch(std::span<const double> samples, double expected) {
    std::vector<double> pitches;
    for (const auto stretch : stretches(samples))
        if (const auto pitch = analysis::measure_pitch(stretch, rate, analysis::pitch_range_around(expected)))
            pitches.push_back(pitch->hz);
    return median(pitches);
}

double median_level_db(std::span<const double> samples) {
    std::vector<double> levels;
    for (const auto stretch : stretches(samples)) levels.push_back(analysis::db_from_ratio(analysis::rms(stretch)));
    return median(levels);
}

}  // namespace

TEST_F(SoundServerTest, StopOffTheBoardIsToldAndTheNoteSoundsOn) {
    const sim::Preset preset = sim::find_preset("violin");
    LiveBow bow;
    QString told;
    QObject::connect(&bow, &LiveBow::failed, [&](const QString& message) { told = message; });
    bow.set_note(preset, 0, 0.0);
    bow.start();
    wait_for(200);
    EXPECT_TRUE(told.isEmpty()) << told.toStdString();
    bow.set_note(preset, 0, 99.0);
    for (int i = 0; i < 50 && told.isEmpty(); ++i) wait_for(100);
    EXPECT_TRUE(told.contains("off the board")) << told.toStdString();
    EXPECT_TRUE(bow.sounding());
}

/// source   own check: the same stroke by `play`
/// expects  the note on the monitor with the simulation's pitch, 3 cents, and its level times the scale, 0.5 dB; the
/// ear
///          names Helmholtz motion, hears that pitch and that level
/// margin   as said
TEST_F(SoundServerTest, BowedNoteComesOutWithItsPitchAndLevel) {
    const sim::Preset preset = sim::find_preset("division_bass_viol");
    const sim::Note note = sim::make_note(preset, preset.strings[0], 12.0);
    const sim::StrokeResult still = sim::play(
        note, {.contact_point = 0.035, .force = 0.2, .speed = 0.2, .rise = preset.player.rise, .duration = 0.8});
    ASSERT_TRUE(still.tone.pitch);
    SoundServer::Recording recording;
    LiveBow bow;
    std::optional<LiveHearing> last;
    int hearings = 0;
    QObject::connect(&bow, &LiveBow::heard, [&](LiveHearing hearing) {
        last = hearing;
        ++hearings;
    });
    QObject::connect(&bow, &LiveBow::failed, [](const QString& message) { FAIL() << message.toStdString(); });
    bow.set_volume(1.0);
    bow.set_note(preset, 0, 12.0);
    bow.set_stroke({.contact = 0.035, .force = 0.2, .speed = 0.2});
    bow.start();
    EXPECT_TRUE(bow.sounding());
    wait_for(1800);
    const std::vector<double> samples = recording.samples();
    bow.stop();
    ASSERT_GT(samples.size(), 60000U);
    const auto end = std::span(samples).last(38400);
    EXPECT_NEAR(analysis::cents_between(median_pitch(end, *still.tone.pitch), *still.tone.pitch), 0.0, 3.0);
    const double scale = sim::sound::live_scale(preset, sim::open_string(preset, preset.strings[0]));
    EXPECT_NEAR(median_level_db(end), analysis::db_from_ratio(still.tone.level * scale), 0.5);
    ASSERT_TRUE(last);
    EXPECT_EQ(last->motion, sim::Motion::helmholtz);
    EXPECT_NEAR(analysis::cents_between(last->pitch_hz, *still.tone.pitch), 0.0, 3.0);
    EXPECT_NEAR(last->level_db, analysis::db_from_ratio(still.tone.level), 0.5);
    EXPECT_GT(last->peak, 0.02);
    EXPECT_GE(hearings, 15);
    wait_for(400);
    const std::vector<double> all = recording.samples();
    EXPECT_LT(median_level_db(std::span(all).last(4800)), -90.0);  // it has stopped
}

/// expects  a tone on the input with its pitch, 3 cents, its level, 0.5 dB, and its brightness, 5 %
/// margin   as said.  Centroid of three partials 1, 1/2, 1/4: (1 + 1 + 3/4) / (7/4) = 1.571 f0
TEST_F(SoundServerTest, MicrophoneHearsAToneThatIsPlayed) {
    const std::vector<double> tone =
        tests::harmonic_tone({.hz = 293.7, .sample_rate = rate, .duration = 8.0},
                             [](int n) { return n <= 3 ? 0.2 / std::pow(2.0, n - 1) : 0.0; });
    const SoundServer::Playing playing(tone);
    gui::Listening listening;
    std::vector<gui::HeardSound> heard;
    QObject::connect(&listening, &gui::Listening::heard, [&](gui::HeardSound sound) { heard.push_back(sound); });
    QObject::connect(&listening, &gui::Listening::failed,
                     [](const QString& message) { FAIL() << message.toStdString(); });
    listening.start();
    for (int i = 0; i < 100 && heard.empty(); ++i) wait_for(50);
    heard.clear();
    EXPECT_EQ(listening.kept_seconds(), 0.0);  // nothing is, unless asked for
    listening.keep(true);
    wait_for(2000);
    listening.keep(false);
    listening.stop();
    const analysis::Signal kept = listening.take_kept();
    EXPECT_NEAR(static_cast<double>(kept.samples.size()) / kept.sample_rate, 2.0, 0.5);
    EXPECT_NEAR(analysis::cents_between(median_pitch(kept.samples, 293.7), 293.7), 0.0, 3.0);
    EXPECT_EQ(listening.kept_seconds(), 0.0);
    ASSERT_GE(heard.size(), 15U);
    std::vector<double> pitches, levels, brightnesses;
    for (const gui::HeardSound& sound : std::span(heard).last(10)) {
        pitches.push_back(sound.pitch_hz);
        levels.push_back(sound.level_db);
        brightnesses.push_back(sound.brightness_f0);
        EXPECT_FALSE(sound.clipped);
    }
    EXPECT_NEAR(analysis::cents_between(median(pitches), 293.7), 0.0, 3.0);
    EXPECT_NEAR(median(levels), analysis::db_from_ratio(analysis::rms(tone)), 0.5);
    EXPECT_NEAR(median(brightnesses), 1.571, 0.05 * 1.571);
}

/// expects  a sentence and an end of the sound where the server goes away; last, since nothing sounds afterwards
TEST_F(SoundServerTest, LostOutputIsToldWhileItSounds) {
    LiveBow bow;
    QString told;
    QObject::connect(&bow, &LiveBow::failed, [&](const QString& message) { told = message; });
    bow.set_note(sim::find_preset("violin"), 0, 0.0);
    bow.set_stroke({.contact = 0.03, .force = 0.3, .speed = 0.2});
    bow.start();
    wait_for(500);
    EXPECT_TRUE(bow.sounding());
    EXPECT_TRUE(told.isEmpty()) << told.toStdString();
    server->end();
    for (int i = 0; i < 50 && told.isEmpty(); ++i) wait_for(100);
    EXPECT_TRUE(told.contains("lost")) << told.toStdString();
    EXPECT_FALSE(bow.sounding());
}
