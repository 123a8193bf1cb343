// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace {

using nlohmann::json;
using testing::HasSubstr;
using tests::Bowband;
using tests::missing_keys;
using tests::Outcome;

const std::string small_speeds =
    "speeds division_bass_viol --stop D5,7 --speeds-m-s 0.1,0.4 --contact-points 4 --forces 2";

void check_row(const json& row) {
    EXPECT_THAT(
        missing_keys(row, {"stop_semitones",    "pitch_name",        "force_rule",     "dynamic",    "speed_m_s",
                           "speed_factor",      "force_newtons",     "best_mm",        "best_ratio", "security",
                           "speaks_share",      "fails_by",          "band",           "stretch",    "reason",
                           "force_min_newtons", "force_max_newtons", "forgiveness_db", "level_db",   "brightness_f0",
                           "pitch_cents",       "clarity_db"}),
        testing::IsEmpty());
    const double factor = row["speed_factor"].get<double>();
    const double scaled = row["force_rule"] == "same_forces" ? 1.0 : factor;
    EXPECT_NEAR(row["force_newtons"][0].get<double>(), 0.1 * scaled, 1e-6);
    EXPECT_NEAR(row["speed_m_s"].get<double>(), 0.2 * factor, 1e-6);
}

/// expects  from one run the table with its sentences, a line of CSV and a row of JSON for each of two notes, two
/// speeds
///          by two rules and six dynamics; stops in rising order, pitches taken; and the same bytes from its own record
///          on another number of threads
TEST(SpeedsCommandTest, AnswersInEveryFormAndRepeatsItsOwnRecord) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(small_speeds + " --threads 1 --json first.json --csv rows.csv");
    ASSERT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    for (const char* said : {"the same forces at every speed", "forces in proportion to the speed",
                             "soft to loud, force and speed times pp 0.5", "Stop 12: ", "a slow stroke (0.1 m/s)",
                             "a quick one (0.4 m/s)", "With force in proportion to speed"})
        EXPECT_THAT(outcome.out, HasSubstr(said));
    EXPECT_THAT(outcome.out, testing::EndsWith(".\n"));
    EXPECT_EQ(std::ranges::count(tests::contents(bowband.file("rows.csv")), '\n'), 21);

    const std::string text = tests::contents(bowband.file("first.json"));
    const json answer = json::parse(text);
    EXPECT_EQ(answer["run"]["settings"]["stop_semitones"], "7,12");
    EXPECT_EQ(answer["run"]["settings"]["speeds_m_s"], "0.1,0.4");
    ASSERT_EQ(answer.at("rows").size(), 2U * (2U * 2U + 6U));
    for (const json& row : answer["rows"]) check_row(row);
    EXPECT_EQ(answer["rows"][0]["stop_semitones"], 7);
    ASSERT_EQ(answer["answers"].size(), 2U);
    EXPECT_EQ(answer["rows"][answer["answers"][1]["slow_row"].get<std::size_t>()]["speed_m_s"], 0.1);
    EXPECT_EQ(answer["rows"][answer["answers"][1]["quick_row"].get<std::size_t>()]["speed_m_s"], 0.4);
    EXPECT_EQ(answer["dynamics"]["ff"], 2.8);
    EXPECT_EQ(bowband.run_line("speeds --repeat first.json --threads 3 --json -").out, text);
}

TEST(SpeedsCommandTest, DrawsAChart) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(
        "speeds division_bass_viol --stop 12,12 --speeds-m-s 0.1,0.4 --contact-points 3 --forces 2 --quiet "
        "--chart speeds.svg --json x.json");
    if (outcome.exit_code == 2) GTEST_SKIP() << outcome.err;
    EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
    const std::string svg = tests::contents(bowband.file("speeds.svg"));
    for (const char* said : {"bow speed, m/s", "contact point, mm", "security, share", "stop 12 (D5)", "p at 0.14"})
        EXPECT_THAT(svg, HasSubstr(said));
    EXPECT_EQ(json::parse(tests::contents(bowband.file("x.json")))["run"]["settings"]["stop_semitones"], 12);
}

}  // namespace
