// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/audio_file.hpp"
#include "tests/analysis/tones.hpp"
#include "tests/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdint>
#include <limits>

namespace {

using nlohmann::json;
using testing::HasSubstr;
using tests::Bowband;
using tests::missing_keys;
using tests::Outcome;

constexpr double rate = 48000.0;

/// Two notes, A4 and D5, a little sharp.
void put_two_notes(const std::filesystem::path& place) {
    std::vector<double> sound(static_cast<std::size_t>(2.2 * rate), 0.0);
    for (const auto& [from, hz] : {std::pair(0.2, 442.0), std::pair(1.2, 590.0)}) {
        const auto tone = tests::sawtooth({.hz = hz, .sample_rate = rate, .duration = 0.8, .max_hz = 9000.0});
        for (std::size_t j = 0; j < tone.size(); ++j) sound[static_cast<std::size_t>(from * rate) + j] += 0.2 * tone[j];
    }
    analysis::write_audio(place, analysis::Signal{sound, rate});
}

TEST(AnalyseCommandTest, JsonHoldsWhatTheContractSays) {
    const Bowband bowband;
    put_two_notes(bowband.file("a.flac"));
    const json answer = bowband.json("analyse a.flac --json -");
    EXPECT_THAT(missing_keys(answer, {"run", "recording", "notes", "warnings"}), testing::IsEmpty());
    EXPECT_THAT(missing_keys(answer["run"], {"program", "version", "command", "file", "file_hash", "settings"}),
                testing::IsEmpty());
    ASSERT_EQ(answer["notes"].size(), 2U);
    EXPECT_THAT(
        missing_keys(answer["notes"][0],
                     {"start_s", "end_s", "pitch_hz", "pitch_name", "pitch_cents", "pitch_stability_cents",
                      "centroid_hz", "brightness_f0", "power_centroid_hz", "clarity_db", "level_db", "time_to_clean_ms",
                      "inharmonicity", "motion", "confidence", "motion_shares", "partials"}),
        testing::IsEmpty());
    EXPECT_EQ(answer["notes"][0]["pitch_name"], "A4");
    EXPECT_NEAR(answer["notes"][0]["pitch_cents"].get<double>(), 7.85, 0.3);  // 1200 log2(442/440)
    EXPECT_EQ(answer["notes"][1]["pitch_name"], "D5");
}

/// expects  sixth-comma meantone's D, narrow fifth by fifth from A, to lie 1.6 cents above the equal one:
///          a fifth of 701.955 - 21.506/6 cents is 1.63 under 700, and D lies one fifth below A
TEST(AnalyseCommandTest, CentsFollowTemperamentAndReference) {
    const Bowband bowband;
    put_two_notes(bowband.file("a.wav"));
    const auto cents = [&](const std::string& options) {
        return bowband.json("analyse a.wav --json - " + options)["notes"][1]["pitch_cents"].get<double>();
    };
    const double equal = cents("");
    EXPECT_NEAR(cents("--temperament sixth_comma") - equal, -1.63, 0.01);
    EXPECT_NEAR(cents("--reference-pitch-hz 442") - equal, -7.85, 0.01);
}

/// expects  the same bytes each time, a table, a line a note, a chart that exists
TEST(AnalyseCommandTest, GivesTableCsvAndTheSameBytesEachTime) {
    const Bowband bowband;
    put_two_notes(bowband.file("a.wav"));
    EXPECT_EQ(bowband.run_line("analyse a.wav --json -").out, bowband.run_line("analyse a.wav --json -").out);
    const Outcome outcome = bowband.run_line("analyse a.wav --csv a.csv");
    EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    EXPECT_THAT(outcome.out, testing::AllOf(HasSubstr("A4"), HasSubstr("D5"), HasSubstr("motion")));
    EXPECT_THAT(tests::contents(bowband.file("a.csv")), testing::StartsWith("start_s,steady_from_s,"));
}

std::string word(std::uint32_t value) {
    std::string bytes;
    for (int k = 0; k < 4; ++k) bytes += static_cast<char>((value >> (8 * k)) & 255U);
    return bytes;
}

/// A WAV of 32-bit floats whose header says what it likes.
std::string wav(std::uint32_t sample_rate, std::uint32_t channels, std::uint32_t announced, const std::string& data) {
    const std::string form{'\x03', '\0', static_cast<char>(channels), '\0'};
    return "RIFF" + word(announced + 36) + "WAVEfmt " + word(16) + form + word(sample_rate) +
           word(sample_rate * 4 * channels) + std::string{static_cast<char>(4 * channels), '\0', '\x20', '\0'} +
           "data" + word(announced) + data;
}

struct BadSound {
    const char* title;
    const char* name;
    std::string bytes;
    std::vector<const char*> said;
};
void PrintTo(const BadSound& sound, std::ostream* out) { *out << sound.title; }

class BadSoundTest : public testing::TestWithParam<BadSound> {};

/// expects  exit 2, one line that says what is wrong with the file and what would do, and nothing written
TEST_P(BadSoundTest, GivesOneLineAndWritesNothing) {
    const Bowband bowband;
    tests::put(bowband.file(GetParam().name), GetParam().bytes);
    const Outcome outcome = bowband.run_line(std::string("analyse ") + GetParam().name + " --json x.json");
    EXPECT_EQ(outcome.exit_code, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1) << outcome.err;
    EXPECT_THAT(outcome.err, HasSubstr(GetParam().name));
    for (const char* said : GetParam().said) EXPECT_THAT(outcome.err, HasSubstr(said));
    EXPECT_EQ(bowband.file_count(), 1U);
}

const std::string silence(4 * 4096, '\0');
const std::string not_a_number = [] {
    const float nan = std::numeric_limits<float>::quiet_NaN();
    return std::string(4096, '\0') + std::string(reinterpret_cast<const char*>(&nan), 4) + std::string(4092, '\0');
}();

INSTANTIATE_TEST_SUITE_P(
    Files, BadSoundTest,
    testing::Values(
        BadSound{"Empty", "a.wav", "", {"is empty"}},
        BadSound{"CutShort", "a.wav", wav(48000, 1, 100000, silence), {"cut short", "missing"}},
        BadSound{"TwoGigabytesAnnounced", "a.wav", wav(48000, 1, 2000000000U, silence), {"cut short", "missing"}},
        BadSound{"NoRate", "a.wav", wav(0, 1, 16384, silence), {"0 Hz", "1000 Hz"}},
        BadSound{"NotANumber", "a.wav", wav(48000, 1, 8192, not_a_number), {"not a finite number"}},
        BadSound{"EightChannels", "a.wav", wav(48000, 8, 16384, silence), {"8 channels", "one or two"}},
        BadSound{"NoFrames", "a.wav", wav(48000, 1, 0, ""), {"no sound"}},
        BadSound{"Text", "a.wav", "do re mi fa sol la\n", {"not a sound file", "WAV, FLAC"}},
        BadSound{"Phone",
                 "a.m4a",
                 std::string("\0\0\0\x1c", 4) + "ftypM4A " + std::string(64, '\0'),
                 {"m4a", "ffmpeg -i", "WAV or FLAC"}},
        BadSound{"PhoneRenamed",
                 "a.wav",
                 std::string("\0\0\0\x1c", 4) + "ftypM4A " + std::string(64, '\0'),
                 {"m4a", "ffmpeg -i"}}),
    [](const auto& sound) { return std::string(sound.param.title); });

/// A header of the full 4 GB is what programs write into a pipe: what is there is read, and that is told.
TEST(AnalyseCommandTest, LengthThatIsNotThereIsTold) {
    const Bowband bowband;
    tests::put(bowband.file("a.wav"), wav(48000, 1, 0xFFFFFFFFU, silence));
    const Outcome outcome = bowband.run_line("analyse a.wav");
    EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_THAT(outcome.out, testing::AllOf(HasSubstr("2 GB"), HasSubstr("Silence")));
}

TEST(AnalyseCommandTest, BadOptionsAreTold) {
    const Bowband bowband;
    put_two_notes(bowband.file("a.wav"));
    for (const auto& [options, said] :
         std::vector<std::pair<std::string, std::string>>{{"--reference-pitch-hz 4", "300 to 550 Hz"},
                                                          {"--temperament rule_of_18", "sixth_comma"},
                                                          {"--note H4", "pitch"},
                                                          {"--note 9", "20 to 5000"},
                                                          {"--range-hz 100:150", "an octave"}}) {
        const Outcome outcome = bowband.run_line("analyse a.wav " + options);
        EXPECT_EQ(outcome.exit_code, 2) << options;
        EXPECT_THAT(outcome.err, HasSubstr(said)) << options;
    }
    EXPECT_THAT(bowband.run_line("analyse nosuch.wav").err, HasSubstr("no such file"));
    EXPECT_THAT(bowband.run_line("analyse").err, HasSubstr("SOUND"));
}

}  // namespace
