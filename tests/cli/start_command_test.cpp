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

const std::string small_start =
    "start division_bass_viol --stop 5 --contact-mm 40 --forces 5 --paces 3 --acceleration-m-s2 0.6:1.5";
const std::string small_crossing =
    "start division_bass_viol --stop 5 --contact-mm 40 --forces 4 --paces 3 --beginning crossing";

TEST(StartCommandTest, JsonHoldsNoteMapAndWedge) {
    const Bowband bowband;
    const json answer = bowband.json(small_start + " --json -");
    EXPECT_THAT(missing_keys(answer, {"run", "note", "beginning", "acceptance", "map", "wedge"}), testing::IsEmpty());
    EXPECT_EQ(answer["beginning"], "from-rest");
    EXPECT_EQ(answer["note"]["contact_mm"], 40.0);
    EXPECT_EQ(answer["acceptance"]["strict"]["within_ms"], 50.0);
    EXPECT_EQ(answer["acceptance"]["lenient"]["within_ms"], 90.0);
    ASSERT_EQ(answer["map"].size(), 15U);
    for (const json& cell : answer["map"])
        EXPECT_THAT(
            missing_keys(cell, {"acceleration_m_s2", "force_newtons", "motion", "first_slip_ms", "transient_ms",
                                "transient_periods", "first_gap_periods", "strict", "lenient", "runs", "votes"}),
            testing::IsEmpty());
    for (const char* limit : {"strict", "lenient"}) {
        const json& wedge = answer["wedge"][limit];
        EXPECT_THAT(missing_keys(wedge, {"low_edge", "high_edge", "clean_cells", "unsure_cells", "middle_force",
                                         "columns", "in_words"}),
                    testing::IsEmpty());
        EXPECT_EQ(wedge["columns"].size(), 3U);
    }
}

/// expects  the map from a quarter of the player's least force to four times the greatest
TEST(StartCommandTest, RangesComeFromThePlayer) {
    const Bowband bowband;
    const json answer = bowband.json(small_start + " --force-newtons 0.2:0.3 --json -");
    EXPECT_NEAR(answer["map"].front()["force_newtons"].get<double>(), 0.05, 1e-9);
    EXPECT_NEAR(answer["map"].back()["force_newtons"].get<double>(), 1.2, 1e-9);
    EXPECT_EQ(answer["map"].front()["acceleration_m_s2"], 0.6);
    EXPECT_EQ(answer["map"].back()["acceleration_m_s2"], 1.5);
}

TEST(StartCommandTest, CrossingsAreMappedOverTheForcesRise) {
    const Bowband bowband;
    const json answer = bowband.json(small_crossing + " --json - --csv cells.csv");
    EXPECT_EQ(answer["beginning"], "crossing");
    EXPECT_NEAR(answer["map"].front()["force_rise_ms"].get<double>(), 6.0, 1e-9);  // a tenth of 60 ms
    EXPECT_NEAR(answer["map"].back()["force_rise_ms"].get<double>(), 240.0, 1e-9);
    const std::string cells = tests::contents(bowband.file("cells.csv"));
    EXPECT_THAT(cells, testing::StartsWith("force_rise_ms,force_newtons,motion,first_slip_ms,transient_ms,"
                                           "transient_periods,first_gap_periods,strict,lenient,runs,votes_strict,"
                                           "votes_lenient\n"));
    EXPECT_EQ(std::ranges::count(cells, '\n'), 13);
}

TEST(StartCommandTest, TableEndsWithPlainSentences) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(small_start);
    EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_THAT(outcome.out, HasSubstr("m/s a second"));
    EXPECT_THAT(outcome.out, HasSubstr("(strict)"));
    EXPECT_THAT(outcome.out, HasSubstr("(lenient)"));
    EXPECT_THAT(outcome.out, testing::EndsWith(".\n"));
}

}  // namespace
