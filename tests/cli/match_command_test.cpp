// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/analysis/tones.hpp"
#include "tests/cli/program.hpp"
#include "tests/match/one_stroke.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace {

using nlohmann::json;
using testing::HasSubstr;
using tests::Bowband;
using tests::missing_keys;
using tests::Outcome;
using tests::put_stroke;

constexpr double rate = 48000.0;
const std::string small_match = "match a.wav division_bass_viol --string 1 --contact-points 24 --forces 8";

void put_tone(const std::filesystem::path& place, double hz, double seconds) {
    std::vector<double> sound(static_cast<std::size_t>(rate), 0.0);
    const auto tone = tests::sawtooth({.hz = hz, .sample_rate = rate, .duration = seconds, .max_hz = 9000.0});
    for (std::size_t j = 0; j < tone.size(); ++j) sound[4800 + j] += 0.2 * tone[j];
    analysis::write_audio(place, analysis::Signal{sound, rate});
}

/// expects  the place that was bowed to lie in the region, on the string that was named, the same bytes on any threads
///          and from the run's own record
TEST(MatchCommandTest, FindsThePlaceOfAStrokeAndRepeatsItself) {
    const Bowband bowband;
    put_stroke(bowband.file("a.wav"));
    const Outcome first = bowband.run_line(small_match + " --threads 1 --json -");
    ASSERT_EQ(first.exit_code, 0) << first.err;
    EXPECT_EQ(first.err, "");
    const json answer = json::parse(first.out);
    EXPECT_THAT(missing_keys(answer, {"run", "recording", "notes", "warnings"}), testing::IsEmpty());
    EXPECT_THAT(missing_keys(answer["run"], {"version", "command", "preset", "settings", "sound", "sound_hash"}),
                testing::IsEmpty());
    ASSERT_EQ(answer["notes"].size(), 1U);
    const json& note = answer["notes"][0];
    EXPECT_THAT(missing_keys(note, {"start_s", "end_s", "pitch_hz", "pitch_name", "pitch_cents", "abstains",
                                    "string_told", "in_band", "misfit", "strings", "band", "partials", "period_heard"}),
                testing::IsEmpty());
    ASSERT_TRUE(note["abstains"].is_null()) << note["abstains"];
    const json& string = note["strings"][0];
    EXPECT_EQ(string["string"], "1");
    EXPECT_EQ(string["stop_semitones"], 12);
    EXPECT_LE(string["near_mm"].get<double>(), 35.0);
    EXPECT_GE(string["far_mm"].get<double>(), 35.0);
    EXPECT_LT(string["far_mm"].get<double>() / string["near_mm"].get<double>(), 2.0);
    tests::put(bowband.file("first.json"), first.out);
    EXPECT_EQ(bowband.run_line("match a.wav --repeat first.json --threads 3 --json -").out, first.out);
}

/// expects  a table with the region, sentences that say what it is worth, lines of CSV
TEST(MatchCommandTest, GivesTableWordsAndCsv) {
    const Bowband bowband;
    put_stroke(bowband.file("a.wav"));
    const Outcome outcome = bowband.run_line(small_match + " --csv a.csv --region-share 0.9");
    EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_THAT(outcome.out, testing::AllOf(HasSubstr("contact point"), HasSubstr("90 % of the likelihood"),
                                            HasSubstr("0.1 to 0.4 N at 0.2 m/s")));
    EXPECT_THAT(tests::contents(bowband.file("a.csv")), testing::StartsWith("start_s,end_s,pitch_hz,"));
}

/// expects  no contact point but a reason, for sounds that are no stroke of the instrument
TEST(MatchCommandTest, AbstainsWithAReason) {
    const Bowband bowband;
    put_tone(bowband.file("low.wav"), 41.0, 0.6);
    put_tone(bowband.file("short.wav"), 311.0, 0.09);
    for (const auto& [file, said] :
         std::vector<std::pair<std::string, std::string>>{{"low.wav", "abstains"}, {"short.wav", "abstains"}}) {
        const Outcome outcome =
            bowband.run_line("match " + file + " division_bass_viol --contact-points 12 --forces 4");
        EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
        EXPECT_THAT(outcome.out, HasSubstr(said)) << file;
    }
}

TEST(MatchCommandTest, BadQuestionsAreToldAndWriteNothing) {
    const Bowband bowband;
    put_tone(bowband.file("a.wav"), 311.0, 0.5);
    for (const auto& [line, said] : std::vector<std::pair<std::string, std::string>>{
             {"match", "SOUND"},
             {"match a.wav", "PRESET"},
             {"match nosuch.wav division_bass_viol", "no such file"},
             {"match a.wav nosuch", "no such file or preset"},
             {"match a.wav division_bass_viol --stop 5", "--string"},
             {"match a.wav division_bass_viol --string 9", "9"},
             {"match a.wav division_bass_viol --string 1 --stop 40", "off the board"},
             {"match a.wav division_bass_viol --string 1 --stop 2:5", "one stop"},
             {"match a.wav division_bass_viol --contact-points 2", "5 to 400"},
             {"match a.wav division_bass_viol --region-share 2", "0.1 to 0.99"},
             {"match a.wav division_bass_viol --force-newtons 0.2", "range"},
             {"match a.wav division_bass_viol --contact-points 5 --forces 3 --chart-note 7 --quiet", "no 7"}}) {
        const Outcome outcome = bowband.run_line(line + " --json x.json");
        EXPECT_EQ(outcome.exit_code, 2) << line;
        EXPECT_EQ(outcome.out, "") << line;
        EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1) << outcome.err;
        EXPECT_THAT(outcome.err, HasSubstr(said)) << line;
    }
    EXPECT_EQ(bowband.file_count(), 1U);
}

}  // namespace
