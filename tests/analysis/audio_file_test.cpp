// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/audio_file.hpp"

#include "analysis/errors.hpp"
#include "tests/analysis/temporary_folder.hpp"
#include "tests/analysis/tones.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sndfile.h>
#include <sys/resource.h>
#include <csignal>
#include <cstdint>
#include <limits>
#include <random>

namespace {

using analysis::Audio;
using analysis::InputError;
using analysis::OutputError;
using analysis::read_audio;
using analysis::write_audio;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;
using testing::ThrowsMessage;
using tests::TemporaryFolder;

/// Two channels of noise in steps of 2^-23, so that 24 bits hold it exactly; both ends of the scale are in it.
Audio exact_noise() {
    std::mt19937 random(3);
    std::uniform_int_distribution<int> step(-(1 << 23), (1 << 23) - 1);
    Audio audio{{std::vector<double>(10000), std::vector<double>(10000)}, 48000.0};
    for (auto& channel : audio.channels) {
        for (double& sample : channel) sample = std::ldexp(step(random), -23);
        channel[7] = -1.0;
        channel[8] = std::ldexp((1 << 23) - 1, -23);
    }
    return audio;
}

void append_number(std::string& bytes, std::uint32_t number, int size) {
    for (int k = 0; k < size; ++k) bytes.push_back(static_cast<char>(number >> (8 * k) & 0xFFU));
}

/// A WAV file of one channel made by hand: header and samples say what the test wants.
struct HandMadeWav {
    std::uint32_t sample_rate = 48000;
    std::vector<float> samples;
    std::uint32_t bytes_announced = 0;  ///< in the data chunk; 0 = as many as there are

    std::string bytes() const {
        const auto size = static_cast<std::uint32_t>(samples.size() * 4);
        const std::uint32_t announced = bytes_announced == 0 ? size : bytes_announced;
        std::string result = "RIFF";
        append_number(result, announced + 36, 4);
        result += "WAVEfmt ";
        append_number(result, 16, 4);
        append_number(result, 3, 2);  // IEEE float
        append_number(result, 1, 2);
        append_number(result, sample_rate, 4);
        append_number(result, sample_rate * 4, 4);
        append_number(result, 4, 2);
        append_number(result, 32, 2);
        result += "data";
        append_number(result, announced, 4);
        result.append(reinterpret_cast<const char*>(samples.data()), size);
        return result;
    }
};

auto one_line_about(const std::filesystem::path& file, const std::string& part) {
    return ThrowsMessage<InputError>(AllOf(StartsWith(file.string() + ": "), HasSubstr(part), Not(HasSubstr("\n"))));
}

/// 1000 frames of 0.25 at 48 kHz in one channel.
void put_with_library(const std::filesystem::path& place, int format) {
    SF_INFO info{};
    info.samplerate = 48000;
    info.channels = 1;
    info.format = format;
    SNDFILE* file = sf_open(place.c_str(), SFM_WRITE, &info);
    ASSERT_NE(file, nullptr);
    const std::vector<double> samples(1000, 0.25);
    EXPECT_EQ(sf_writef_double(file, samples.data(), 1000), 1000);
    sf_close(file);
}

class RoundTripTest : public testing::TestWithParam<const char*> {};

INSTANTIATE_TEST_SUITE_P(BothFormats, RoundTripTest, testing::Values("a.wav", "a.flac", "b.WAV", "b.Flac"));

TEST_P(RoundTripTest, TwentyFourBitsComeBackExactly) {
    const TemporaryFolder folder;
    const Audio audio = exact_noise();
    write_audio(folder / GetParam(), audio);
    EXPECT_EQ(read_audio(folder / GetParam()), audio);
    EXPECT_EQ(folder.file_count(), 1U);
}

/// expects  the nearest step, half of 2^-23 away at most, and clipping instead of wrapping round
TEST_P(RoundTripTest, SamplesAreRoundedAndClipped) {
    const TemporaryFolder folder;
    write_audio(folder / GetParam(), analysis::Signal{{0.1, -0.30000001, 1.5, -2.0}, 44100.0});
    const Audio back = read_audio(folder / GetParam());
    EXPECT_EQ(back.sample_rate, 44100.0);
    ASSERT_EQ(back.channels.size(), 1U);
    const auto& samples = back.channels.front();
    EXPECT_NEAR(samples[0], 0.1, std::ldexp(1.0, -24));
    EXPECT_NEAR(samples[1], -0.30000001, std::ldexp(1.0, -24));
    EXPECT_NEAR(samples[2], 1.0, std::ldexp(1.0, -23));
    EXPECT_EQ(samples[3], -1.0);
}

TEST_P(RoundTripTest, SameSoundGivesTheSameBytes) {
    const TemporaryFolder folder;
    write_audio(folder / GetParam(), exact_noise());
    const std::string first = tests::contents(folder / GetParam());
    write_audio(folder / GetParam(), exact_noise());
    EXPECT_EQ(tests::contents(folder / GetParam()), first);
}

TEST_P(RoundTripTest, FullDiskIsToldAndLeavesNothing) {
    const TemporaryFolder folder;
    rlimit before{};
    ::getrlimit(RLIMIT_FSIZE, &before);
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{30000, before.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &limit);
    EXPECT_THROW(write_audio(folder / GetParam(), exact_noise()), OutputError);
    ::setrlimit(RLIMIT_FSIZE, &before);
    std::signal(SIGXFSZ, handler);
    EXPECT_EQ(folder.file_count(), 0U);
}

TEST_P(RoundTripTest, FileCutShortIsRejected) {
    const TemporaryFolder folder;
    const auto file = folder / GetParam();
    write_audio(file, exact_noise());
    std::filesystem::resize_file(file, std::filesystem::file_size(file) * 2 / 3);
    EXPECT_THAT([&] { read_audio(file); }, one_line_about(file, "cut short"));
}

TEST_P(RoundTripTest, FileCutAnywhereIsRejected) {
    const TemporaryFolder folder;
    const auto file = folder / GetParam();
    write_audio(file, analysis::Signal{{0.1, 0.2, -0.3, 0.4, 0.5, -0.6}, 48000.0});
    for (auto size = std::filesystem::file_size(file); size-- > 0;) {
        std::filesystem::resize_file(file, size);
        EXPECT_THROW(read_audio(file), InputError) << size << " bytes left";
    }
}

/// Formats that are read but not written.
TEST(AudioFileTest, AiffAndOggAreReadAndACutAiffIsRejected) {
    const TemporaryFolder folder;
    const auto aiff = folder / "a.aiff";
    put_with_library(aiff, SF_FORMAT_AIFF | SF_FORMAT_PCM_16);
    EXPECT_EQ(read_audio(aiff).channels, (std::vector<std::vector<double>>{std::vector<double>(1000, 0.25)}));
    std::filesystem::resize_file(aiff, 1500);
    EXPECT_THAT([&] { read_audio(aiff); }, one_line_about(aiff, "cut short"));
    put_with_library(folder / "a.ogg", SF_FORMAT_OGG | SF_FORMAT_VORBIS);
    EXPECT_EQ(read_audio(folder / "a.ogg").channels.front().size(), 1000U);
}

TEST(AudioFileTest, FlacTakesLessRoomThanWav) {
    const TemporaryFolder folder;
    const tests::Tone tone{.hz = 220.0, .sample_rate = 48000.0, .duration = 1.0};
    std::vector<double> samples = tests::sine(tone);
    write_audio(folder / "a.wav", analysis::Signal{samples, 48000.0});
    write_audio(folder / "a.flac", analysis::Signal{samples, 48000.0});
    EXPECT_EQ(std::filesystem::file_size(folder / "a.wav"), 44U + 3U * 48000U);
    EXPECT_LT(std::filesystem::file_size(folder / "a.flac"), 3U * 48000U);
}

TEST(AudioFileTest, OtherEndingIsRejectedNamingTheAcceptedOnes) {
    const TemporaryFolder folder;
    for (const char* name : {"a.mp3", "a", "a.wav.txt", "wav"}) {
        const auto place = folder / name;
        EXPECT_THAT([&] { write_audio(place, exact_noise()); }, one_line_about(place, ".wav or .flac")) << name;
        EXPECT_THAT([&] { analysis::require_audio_ending(place); }, one_line_about(place, ".wav or .flac")) << name;
    }
    EXPECT_EQ(folder.file_count(), 0U);
    EXPECT_NO_THROW(analysis::require_audio_ending("x/y.FLAC"));
}

TEST(AudioFileTest, PlaceThatCannotBeWrittenIsAnOutputError) {
    const TemporaryFolder folder;
    EXPECT_THROW(write_audio(folder / "none/a.wav", exact_noise()), OutputError);
}

TEST(AudioFileTest, PlaceMadeReadyBeforeIsFilledAndCommitted) {
    const TemporaryFolder folder;
    analysis::OutputFile file(folder / "a.flac");
    analysis::fill_audio(file, exact_noise());
    EXPECT_FALSE(std::filesystem::exists(folder / "a.flac"));
    file.commit();
    EXPECT_EQ(read_audio(folder / "a.flac"), exact_noise());
}

TEST(AudioFileTest, WhatIsNoSoundFileIsRejected) {
    const TemporaryFolder folder;
    const auto missing = folder / "missing.wav";
    EXPECT_THAT([&] { read_audio(missing); }, one_line_about(missing, "no such file"));
    EXPECT_THAT([&] { read_audio(folder.path()); }, one_line_about(folder.path(), "is a folder"));
    EXPECT_THAT([] { read_audio("/dev/null"); }, one_line_about("/dev/null", "not a plain file"));
    const auto empty = folder / "empty.wav";
    tests::put(empty, "");
    EXPECT_THAT([&] { read_audio(empty); }, one_line_about(empty, "is empty"));
    for (const char* name : {"text.wav", "text.flac", "text.vox", "text.gsm", "text.raw", "text"}) {
        tests::put(folder / name, "This is a letter, not a sound, though its name says so.\n");
        EXPECT_THAT([&] { read_audio(folder / name); }, one_line_about(folder / name, "WAV, FLAC")) << name;
    }
}

TEST(AudioFileTest, HeaderAloneIsRejected) {
    const TemporaryFolder folder;
    const auto file = folder / "a.wav";
    tests::put(file, HandMadeWav{.samples = {}}.bytes());
    EXPECT_THAT([&] { read_audio(file); }, one_line_about(file, "no sound"));
    tests::put(file, HandMadeWav{.samples = {0.5F}}.bytes().substr(0, 30));
    EXPECT_THROW(read_audio(file), InputError);
}

TEST(AudioFileTest, SamplesThatAreNoNumbersAreRejectedByPlace) {
    const TemporaryFolder folder;
    const auto file = folder / "a.wav";
    for (const float bad : {std::numeric_limits<float>::quiet_NaN(), std::numeric_limits<float>::infinity()}) {
        std::vector<float> samples(5000, 0.25F);
        samples[4711] = bad;
        tests::put(file, HandMadeWav{.samples = samples}.bytes());
        EXPECT_THAT([&] { read_audio(file); }, one_line_about(file, "frame 4711 of channel 1"));
    }
}

TEST(AudioFileTest, SampleRateOfNothingIsRejected) {
    const TemporaryFolder folder;
    const auto file = folder / "a.wav";
    for (const std::uint32_t rate : {0U, 10U}) {
        tests::put(file, HandMadeWav{.sample_rate = rate, .samples = {0.1F, 0.2F}}.bytes());
        EXPECT_THAT([&] { read_audio(file); }, one_line_about(file, "1000 Hz or more")) << rate;
    }
}

/// What a program writes into a pipe: it can't know the length.
TEST(AudioFileTest, WavOfUnknownLengthIsReadToItsEnd) {
    const TemporaryFolder folder;
    const auto file = folder / "a.wav";
    tests::put(file, HandMadeWav{.samples = {0.25F, -0.5F, 0.125F}, .bytes_announced = 0xFFFFFFFF}.bytes());
    EXPECT_EQ(read_audio(file).channels, (std::vector<std::vector<double>>{{0.25, -0.5, 0.125}}));
}

TEST(AudioFileTest, MixIsTheMeanOfAllChannels) {
    EXPECT_EQ(analysis::mixed_down({{{1.0, 0.0}, {0.5, 0.5}}, 8000.0}), (analysis::Signal{{0.75, 0.25}, 8000.0}));
}

}  // namespace
