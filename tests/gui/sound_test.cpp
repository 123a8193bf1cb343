// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "gui/sound/card_samples.hpp"
#include "gui/sound/listening.hpp"
#include "gui/sound/live_bow.hpp"
#include "tests/analysis/tones.hpp"
#include "tests/gui/sound_server.hpp"

#include <QCoreApplication>

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <cstring>
#include <random>

namespace {

using tests::wait_for;

QAudioFormat format_of(QAudioFormat::SampleFormat kind, int channels) {
    QAudioFormat format;
    format.setSampleFormat(kind);
    format.setChannelCount(channels);
    format.setSampleRate(48000);
    return format;
}

/// A process without any sound server.
class NoSoundTest : public testing::Test {
protected:
    static void SetUpTestSuite() {
        qputenv("PULSE_SERVER", "unix:/nowhere/at/all");
        static int count = 1;
        static char name[] = "sound_test";
        static char* names[] = {name, nullptr};
        app = std::make_unique<QCoreApplication>(count, names);
    }
    static void TearDownTestSuite() { app.reset(); }

    inline static std::unique_ptr<QCoreApplication> app;
};

}  // namespace

/// expects  what was written comes back, whatever the format
/// margin   one step of 8 or 16 bits; of float's 24 bits
TEST(CardSamplesTest, EveryFormatComesBack) {
    const std::vector<float> samples{0.0F, 0.5F, -0.25F, 1.0F, -1.0F, 1.5F};
    for (const auto& [kind, margin] : {std::pair{QAudioFormat::UInt8, 1.0 / 127},
                                       {QAudioFormat::Int16, 1.0 / 32767},
                                       {QAudioFormat::Int32, 1e-7},
                                       {QAudioFormat::Float, 0.0}}) {
        for (const int channels : {1, 2, 6}) {
            const QAudioFormat format = format_of(kind, channels);
            std::vector<char> bytes(samples.size() * static_cast<std::size_t>(format.bytesPerFrame()));
            gui::write_frames(samples, format, bytes.data());
            std::vector<float> back;
            gui::read_frames(bytes, format, back);
            ASSERT_EQ(back.size(), samples.size());
            for (std::size_t i = 0; i < samples.size(); ++i)
                EXPECT_NEAR(back[i], std::min(samples[i], 1.0F), margin) << kind << " " << channels;  // held to 1
        }
    }
}

TEST(CardSamplesTest, ChannelsAreTheirMeanAndABrokenFrameIsLeftOut) {
    const std::vector<std::int16_t> stereo{32767, 0, -32767, -32767, 16000};
    std::vector<char> bytes(stereo.size() * 2);
    std::memcpy(bytes.data(), stereo.data(), bytes.size());
    std::vector<float> mono;
    gui::read_frames(bytes, format_of(QAudioFormat::Int16, 2), mono);
    EXPECT_EQ(mono, (std::vector<float>{0.5F, -1.0F}));
}

TEST(HeardSoundTest, SilenceAndNoiseHaveNoPitch) {
    const gui::HeardSound silence = gui::heard_sound(std::vector<double>(7200, 0.0), 48000.0);
    EXPECT_EQ(silence.pitch_hz, 0.0);
    EXPECT_EQ(silence.level_db, -120.0);
    EXPECT_FALSE(silence.clipped);
    std::mt19937 random(5);
    std::normal_distribution<double> normal(0.0, 0.1);
    std::vector<double> noise(7200);
    for (double& sample : noise) sample = normal(random);
    const gui::HeardSound heard = gui::heard_sound(noise, 48000.0);
    EXPECT_EQ(heard.pitch_hz, 0.0);
    EXPECT_LT(heard.clarity_db, 0.0);
}

/// expects  pitch within a cent from the lowest string of a violone to the end of a violin's board; a peak cut off told
TEST(HeardSoundTest, ToneHasItsPitchAndACutPeakIsTold) {
    for (const double hz : {46.2, 98.0, 440.0, 1318.5, 2300.0}) {
        auto tone = tests::sawtooth({.hz = hz, .sample_rate = 48000.0, .duration = 0.15});
        for (double& sample : tone) sample *= 0.3;
        gui::HeardSound heard = gui::heard_sound(tone, 48000.0);
        EXPECT_NEAR(analysis::cents_between(heard.pitch_hz, hz), 0.0, 1.0) << hz;
        EXPECT_FALSE(heard.clipped);
        for (double& sample : tone) sample = std::clamp(20.0 * sample, -1.0, 1.0);
        EXPECT_TRUE(gui::heard_sound(tone, 48000.0).clipped);
    }
}

TEST_F(NoSoundTest, NoOutputIsTold) {
    gui::LiveBow bow;
    QString told;
    std::vector<bool> changes;
    QObject::connect(&bow, &gui::LiveBow::failed, [&](const QString& message) { told = message; });
    QObject::connect(&bow, &gui::LiveBow::sounding_changed, [&](bool sounding) { changes.push_back(sounding); });
    bow.set_note(sim::find_preset("violin"), 0, 0.0);
    bow.start();
    for (int i = 0; i < 100 && told.isEmpty(); ++i) wait_for(50);
    EXPECT_TRUE(told.startsWith("There is no sound output")) << told.toStdString();
    EXPECT_FALSE(bow.sounding());
    EXPECT_EQ(changes, (std::vector{true, false}));
}

TEST_F(NoSoundTest, NoInputIsTold) {
    gui::Listening listening;
    QString told;
    QObject::connect(&listening, &gui::Listening::failed, [&](const QString& message) { told = message; });
    listening.start();
    for (int i = 0; i < 100 && told.isEmpty(); ++i) wait_for(50);
    EXPECT_TRUE(told.startsWith("There is no sound input")) << told.toStdString();
    EXPECT_FALSE(listening.listening());
}
