// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace {

using nlohmann::json;
using testing::HasSubstr;
using tests::Bowband;
using tests::missing_keys;
using tests::Outcome;

const std::string small_window = "window division_bass_viol --stop 12 --contact-points 8 --forces 2 --held-points 2";
const std::string small_climb = "climb division_bass_viol --stop 5:7 --contact-points 8 --forces 2";
const std::string small_sensitivity =
    "sensitivity division_bass_viol --only tone_level --stop 12 --contact-points 4 --forces 2 --factor 2";
const std::string small_note = "note division_bass_viol --stop G4 --contact-mm 40 --force-newtons 0.2";

const std::string small_start =
    "start division_bass_viol --stop 5 --contact-mm 40 --forces 4 --paces 3 --acceleration-m-s2 0.5:2";
const std::string small_crossing =
    "start division_bass_viol --stop 5 --contact-mm 40 --forces 3 --paces 3 --beginning crossing";

class HelpTest : public testing::TestWithParam<const char*> {};

/// expects  the line under "Example:" to run as it stands, with nothing on stderr
TEST_P(HelpTest, EndsWithAnExampleThatRuns) {
    const Bowband bowband;
    const Outcome help = bowband.run({GetParam(), "--help"});
    EXPECT_EQ(help.exit_code, 0);
    EXPECT_EQ(help.err, "");
    const std::string mark = "Example:\n  bowband ";
    const std::size_t start = help.out.find(mark);
    ASSERT_NE(start, std::string::npos) << help.out;
    const std::string line =
        help.out.substr(start + mark.size(), help.out.find('\n', start + mark.size()) - start - mark.size());
    EXPECT_THAT(line, testing::StartsWith(GetParam()));
    const Outcome outcome = bowband.run_line(line);
    EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    EXPECT_NE(outcome.out, "");
}

TEST_P(HelpTest, TellsTheVersion) {
    const Bowband bowband;
    const Outcome outcome = bowband.run({GetParam(), "--version"});
    EXPECT_EQ(outcome.exit_code, 0);
    EXPECT_EQ(outcome.out, std::string("bowband ") + BOWBAND_VERSION + "\n");
}

INSTANTIATE_TEST_SUITE_P(Commands, HelpTest,
                         testing::Values("presets", "note", "window", "climb", "lesson", "sensitivity", "ends", "start",
                                         "bridge", "speeds", "laws", "skew", "match", "passage"),
                         [](const auto& command) { return std::string(command.param); });

class RepeatTest : public testing::TestWithParam<std::string> {};

/// expects  the same bytes with 1, 2 and 3 threads, and again from the file's own run record
TEST_P(RepeatTest, GivesTheSameBytesOnAnyThreadsAndFromItsOwnRecord) {
    const Bowband bowband;
    const Outcome first = bowband.run_line(GetParam() + " --wander-mm 2.7 --threads 1 --json -");
    ASSERT_EQ(first.exit_code, 0) << first.err;
    EXPECT_EQ(first.err, "");
    tests::put(bowband.file("first.json"), first.out);
    const std::string command = tests::words_of(GetParam()).front();
    for (const char* threads : {"1", "2", "3"}) {
        const Outcome again = bowband.run_line(command + " --repeat first.json --json - --threads " + threads);
        EXPECT_EQ(again.exit_code, 0) << again.err;
        EXPECT_EQ(again.out, first.out) << threads << " threads";
    }
    EXPECT_EQ(bowband.run_line(GetParam() + " --wander-mm 2.7 --threads 3 --json -").out, first.out);
}

INSTANTIATE_TEST_SUITE_P(Commands, RepeatTest,
                         testing::Values(small_window, small_window + " --contact-mm 30", small_climb, small_note,
                                         small_sensitivity, small_start, small_crossing,
                                         "note violin --stop 3.3 --contact-points 8 --forces 4 --law hyperbola"));

/// expects  a run to be repeated though the preset file has gone
TEST(RepeatOfAFileTest, NeedsNoPresetFile) {
    const Bowband bowband;
    ASSERT_EQ(bowband.run_line("presets --new mine.json --from treble_viol").exit_code, 0);
    const Outcome first = bowband.run_line("note mine.json --contact-mm 20 --json first.json --quiet");
    EXPECT_EQ(first.exit_code, 0) << first.err;
    EXPECT_EQ(first.out, "");
    std::filesystem::remove(bowband.file("mine.json"));
    EXPECT_EQ(bowband.run_line("note --repeat first.json --json -").out, tests::contents(bowband.file("first.json")));
}

TEST(WindowCommandTest, JsonHoldsWhatTheContractNames) {
    const Bowband bowband;
    const json answer = bowband.json(small_window + " --json -");
    EXPECT_THAT(missing_keys(answer, {"run", "note", "points", "band", "other_bands", "reason", "best_mm", "best_ratio",
                                      "security"}),
                testing::IsEmpty());
    EXPECT_THAT(
        missing_keys(answer.at("run"), {"version", "command", "preset_name", "preset_hash", "preset", "settings"}),
        testing::IsEmpty());
    EXPECT_EQ(answer["note"]["pitch_name"], "D5");
    EXPECT_NEAR(answer["note"]["sounding_length_mm"].get<double>(), 345.0, 1e-9);
    ASSERT_EQ(answer["points"].size(), 8U);
    for (const json& point : answer["points"]) {
        EXPECT_THAT(missing_keys(point, {"contact_mm",
                                         "contact_ratio",
                                         "security",
                                         "speaks_share",
                                         "tone_share",
                                         "fails_by",
                                         "force_min_newtons",
                                         "force_max_newtons",
                                         "one_interval",
                                         "held_min_newtons",
                                         "held_max_newtons",
                                         "schelleng_min_newtons",
                                         "schelleng_max_newtons",
                                         "admittance_min_newtons",
                                         "friction_drop",
                                         "forgiveness_db",
                                         "motion",
                                         "level_db",
                                         "brightness_f0",
                                         "pitch_cents"}),
                    testing::IsEmpty());
        if (!point["one_interval"].get<bool>()) {
            EXPECT_TRUE(point.contains("speaking_intervals"));
        }
    }
}

/// expects  only contact points from A to B, and the band as over the whole string
TEST(WindowCommandTest, ARangeOfContactPointsShowsOnlyThose) {
    const Bowband bowband;
    const json whole = bowband.json(small_window + " --json -");
    const json part = bowband.json(small_window + " --contact-mm 20:60 --json -");
    ASSERT_FALSE(part["points"].empty());
    EXPECT_LT(part["points"].size(), whole["points"].size());
    for (const json& point : part["points"]) {
        EXPECT_GE(point["contact_mm"].get<double>(), 20.0);
        EXPECT_LE(point["contact_mm"].get<double>(), 60.0);
    }
    EXPECT_EQ(part["best_mm"], whole["best_mm"]);
}

TEST(WindowCommandTest, OneContactPointIsAnsweredInWords) {
    const Bowband bowband;
    const json answer = bowband.json(small_window + " --contact-mm 30 --json -");
    EXPECT_EQ(answer["here"]["contact_mm"], 30.0);
    EXPECT_THAT(missing_keys(answer["here"], {"security", "from_near_mm", "from_far_mm", "advice"}),
                testing::IsEmpty());
    const Outcome table = bowband.run_line(small_window + " --contact-mm 30");
    EXPECT_THAT(table.out, HasSubstr(answer["here"]["advice"].get<std::string>()));
}

TEST(WindowCommandTest, CsvHasALineForEachContactPoint) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(small_window + " --csv -");
    EXPECT_EQ(outcome.err, "");
    EXPECT_EQ(std::ranges::count(outcome.out, '\n'), 9);
    EXPECT_THAT(outcome.out, testing::StartsWith("contact_mm,contact_ratio,security,"));
}

/// expects  the table beside files, none beside "-" or with --quiet
TEST(WindowCommandTest, TableIsPrintedUnlessQuietOrStdoutIsInUse) {
    const Bowband bowband;
    EXPECT_THAT(bowband.run_line(small_window + " --json x.json").out, HasSubstr("bow at"));
    EXPECT_EQ(bowband.run_line(small_window + " --json x.json --quiet").out, "");
    EXPECT_THAT(bowband.run_line(small_window + " --json - --csv x.csv").out, testing::StartsWith("{"));
    EXPECT_EQ(bowband.file_count(), 2U);
}

TEST(ClimbCommandTest, JsonHoldsWhatTheContractNames) {
    const Bowband bowband;
    const json answer = bowband.json(small_climb + " --json -");
    ASSERT_EQ(answer.at("stops").size(), 3U);
    for (const json& stop : answer["stops"]) {
        EXPECT_THAT(missing_keys(stop, {"stop_semitones",
                                        "stop_from_nut_mm",
                                        "next_semitone_mm",
                                        "cents_per_mm",
                                        "pitch_hz",
                                        "pitch_name",
                                        "sounding_length_mm",
                                        "best_mm",
                                        "best_ratio",
                                        "best_finger_widths",
                                        "security",
                                        "speaks_share",
                                        "tone_share",
                                        "fails_by",
                                        "band",
                                        "other_bands",
                                        "reason",
                                        "force_min_newtons",
                                        "force_max_newtons",
                                        "forgiveness_db",
                                        "left_behind",
                                        "follows",
                                        "body_mode_hz"}),
                    testing::IsEmpty());
        EXPECT_THAT(missing_keys(stop["left_behind"], {"contact_mm", "contact_ratio", "security", "fails_by", "motion",
                                                       "level_db", "brightness_f0", "pitch_cents", "clarity_db"}),
                    testing::IsEmpty());
        EXPECT_EQ(stop["left_behind"]["contact_mm"], answer["stops"][0]["best_mm"]);
    }
}

/// expects  stop n at L (1 - 2^(-n/12)) from the nut, and the next semitone the difference of two neighbours
/// margin   six digits of the file
TEST(ClimbCommandTest, StopsStandWhereEqualTemperamentPutsThem) {
    const Bowband bowband;
    const json stops = bowband.json(small_climb + " --json -").at("stops");
    for (std::size_t i = 0; i < stops.size(); ++i) {
        const double semitones = 5.0 + static_cast<double>(i);
        EXPECT_NEAR(stops[i]["stop_from_nut_mm"].get<double>(), 690.0 * (1.0 - std::exp2(-semitones / 12.0)), 1e-3);
        if (i > 0) {
            EXPECT_NEAR(stops[i - 1]["next_semitone_mm"].get<double>(),
                        stops[i]["stop_from_nut_mm"].get<double>() - stops[i - 1]["stop_from_nut_mm"].get<double>(),
                        2e-3);
        }
    }
}

/// expects  two sounds of 3 x 0.3 s with 0.1 s between, 48 kHz, 3 bytes a sample (44 bytes of header at the least)
TEST(ClimbCommandTest, WritesAPairOfSoundsOfEqualLength) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(small_climb + " --seconds 0.3 --wav pair");
    EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_THAT(outcome.out, HasSubstr("start low"));
    const auto behind = std::filesystem::file_size(bowband.file("pair/bow_left_behind.wav"));
    EXPECT_EQ(behind, std::filesystem::file_size(bowband.file("pair/bow_follows.wav")));
    EXPECT_NEAR(static_cast<double>(behind), 1.1 * 48000.0 * 3.0, 200.0);
}

TEST(ClimbCommandTest, EndsWithPlainSentences) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(small_climb);
    EXPECT_THAT(outcome.out, HasSubstr("left behind"));
    EXPECT_THAT(outcome.out, testing::EndsWith(".\n"));
}

TEST(NoteCommandTest, JsonHoldsWhatTheContractNames) {
    const Bowband bowband;
    const json answer = bowband.json(small_note + " --json -");
    EXPECT_THAT(missing_keys(answer, {"run",
                                      "note",
                                      "motion",
                                      "pitch_hz",
                                      "pitch_cents",
                                      "level_db",
                                      "brightness_f0",
                                      "centroid_hz",
                                      "clarity_db",
                                      "slip_fraction",
                                      "bridge_force_peak_to_peak_newtons",
                                      "force_newtons",
                                      "speed_m_s",
                                      "contact_mm",
                                      "contact_ratio",
                                      "speak_ms",
                                      "first_slip_ms",
                                      "schelleng_min_newtons",
                                      "schelleng_max_newtons",
                                      "admittance_min_newtons",
                                      "sample_rate_hz"}),
                testing::IsEmpty());
    EXPECT_EQ(answer["contact_mm"], 40.0);
    EXPECT_EQ(answer["force_newtons"], 0.2);
    EXPECT_EQ(answer["note"]["stop_semitones"], 5.0);
}

/// expects  a line for every sample, whose mean distance in time is the sample rate's
TEST(NoteCommandTest, WaveformsAreWrittenSampleBySample) {
    const Bowband bowband;
    const json answer = bowband.json(small_note + " --seconds 0.2 --waveform w.csv --wav w.flac --json -");
    const std::string text = tests::contents(bowband.file("w.csv"));
    EXPECT_THAT(text, testing::StartsWith("time_s,bridge_force_newtons,bow_point_velocity_m_s,friction_force_newtons,"
                                          "slipping,temperature_k\n"));
    EXPECT_NEAR(static_cast<double>(std::ranges::count(text, '\n')), 1.0 + 0.2 * answer["sample_rate_hz"].get<double>(),
                2.0);
    EXPECT_TRUE(std::filesystem::exists(bowband.file("w.flac")));
}

/// expects  the geometric middle of the range where no force is given
TEST(NoteCommandTest, TakesBestPlaceAndMiddleForceByItself) {
    const Bowband bowband;
    const json answer =
        bowband.json("note division_bass_viol --contact-points 8 --forces 2 --force-newtons 0.2:0.8 --json -");
    EXPECT_NEAR(answer["force_newtons"].get<double>(), 0.4, 1e-9);
    EXPECT_EQ(answer["run"]["settings"]["contact_mm"], "best");
    EXPECT_GT(answer["contact_mm"].get<double>(), 7.0);
}

}  // namespace
