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

const std::string small_window = "window division_bass_viol --stop 12 --contact-points 6 --forces 2 --held-points 0";
const std::string small_climb = "climb division_bass_viol --stop 11:12 --contact-points 6 --forces 2";

/// expects  a cell for every contact point with every force (the player's 2 and as many either side), each with a
/// clarity
TEST(ToneOfAWindowTest, JsonHoldsAMapOfEveryStroke) {
    const Bowband bowband;
    const json answer = bowband.json(small_window + " --json -");
    ASSERT_EQ(answer.at("map").size(), 6U * 6U);
    int good = 0;
    for (const json& cell : answer["map"]) {
        EXPECT_THAT(missing_keys(cell, {"contact_mm", "force_newtons", "motion", "fault", "level_db", "brightness_f0",
                                        "pitch_cents", "clarity_db"}),
                    testing::IsEmpty());
        EXPECT_TRUE(cell["clarity_db"].is_number()) << cell;
        EXPECT_TRUE(cell["motion"].is_string());
        good += cell["fault"].is_null() ? 1 : 0;
    }
    EXPECT_GT(good, 0);
    EXPECT_LT(good, 36);
}

/// expects  the same cells in the table as in the JSON, and the middle force's tone beside each contact point
TEST(ToneOfAWindowTest, CsvHasALineForEveryStroke) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(small_window + " --tone-csv tone.csv --csv -");
    EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_THAT(outcome.out, HasSubstr("clarity_db"));
    const std::string text = tests::contents(bowband.file("tone.csv"));
    EXPECT_THAT(text, testing::StartsWith("contact_mm,force_newtons,motion,fault,level_db,brightness_f0,pitch_cents,"
                                          "clarity_db\n"));
    EXPECT_EQ(std::ranges::count(text, '\n'), 37);
    EXPECT_EQ(bowband.run_line(small_window + " --tone-csv -").out, text);
}

/// expects  level, brightness, pitch and clarity of both bows, and their spread over the player's forces
TEST(ToneOfAClimbTest, JsonAndCsvHoldTheToneOfBothBows) {
    const Bowband bowband;
    const json answer = bowband.json(small_climb + " --json - --csv climb.csv");
    for (const json& stop : answer.at("stops")) {
        for (const char* bow : {"follows", "left_behind"}) {
            EXPECT_THAT(missing_keys(stop[bow], {"level_db", "brightness_f0", "pitch_cents", "clarity_db", "spread"}),
                        testing::IsEmpty());
            const json& spread = stop[bow]["spread"];
            EXPECT_EQ(spread["strokes"], 2);
            for (const char* key : {"level_db", "clarity_db"}) {
                EXPECT_LE(spread[key]["low"], spread[key]["middle"]);
                EXPECT_LE(spread[key]["middle"], spread[key]["high"]);
            }
        }
    }
    const std::string csv = tests::contents(bowband.file("climb.csv"));
    for (const char* column : {",follows_clarity_db,", ",left_behind_clarity_db,", ",follows_spread_pitch_cents_low,",
                               ",left_behind_spread_clarity_db_high,"})
        EXPECT_THAT(csv, HasSubstr(column));
}

TEST(ToneOfAClimbTest, TableShowsTheToneOfBothBows) {
    const Bowband bowband;
    EXPECT_THAT(bowband.run_line(small_climb).out, HasSubstr("clear dB"));
}

/// expects  charts where there is a build with Qt (elsewhere the option says so and asks for nothing else)
TEST(ToneChartOptionTest, DrawsBothCharts) {
    const Bowband bowband;
    const Outcome window = bowband.run_line(small_window + " --quiet --tone-chart window.svg");
    if (window.exit_code == 2) GTEST_SKIP() << window.err;
    EXPECT_EQ(window.exit_code, 0) << window.err;
    EXPECT_EQ(window.err, "");
    EXPECT_EQ(bowband.run_line(small_climb + " --quiet --tone-chart climb.svg").exit_code, 0);
    EXPECT_THAT(tests::contents(bowband.file("window.svg")), HasSubstr("clarity of pitch, dB"));
    EXPECT_THAT(tests::contents(bowband.file("climb.svg")), HasSubstr("bow left behind at"));
}

}  // namespace
