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

const std::string small =
    "sensitivity division_bass_viol --only tone_level --stop 12 --contact-points 4 --forces 2 --factor 2";

/// expects  unchanged, two grids, two directions; a note for each usual stop from 7 to 12, forces at those shown
TEST(SensitivityCommandTest, JsonHoldsARowForEachChange) {
    const Bowband bowband;
    const json answer = bowband.json(
        "sensitivity division_bass_viol --only tone_level --stop 7:12 --contact-points 4 --forces 2 --json -");
    EXPECT_THAT(missing_keys(answer, {"run", "string", "factor", "grid", "rule", "rows", "strengths", "not_in_force"}),
                testing::IsEmpty());
    EXPECT_EQ(answer["run"]["settings"]["only"], "tone_level");
    ASSERT_EQ(answer["rows"].size(), 5U);
    EXPECT_EQ(answer["rows"][1]["direction"], "finer");
    EXPECT_EQ(answer["rows"][3]["changed"], 9.0);
    EXPECT_EQ(answer["rows"][4]["changed"], 4.0);
    for (const json& row : answer["rows"]) {
        EXPECT_THAT(
            missing_keys(row["rule"], {"verdict", "rank_correlation", "top_over_lowest_ratio", "follows_length"}),
            testing::IsEmpty());
        ASSERT_EQ(row["notes"].size(), 3U);
        EXPECT_EQ(row["notes"][1]["stop_semitones"], 10.0);
        EXPECT_FALSE(row["notes"][1].contains("force_min_newtons"));
        EXPECT_THAT(missing_keys(row["notes"][2],
                                 {"best_mm", "best_shift_mm", "best_shift_percent", "security", "edges_of", "near_mm",
                                  "far_mm", "force_min_newtons", "force_min_shift_percent", "force_max_newtons"}),
                    testing::IsEmpty());
    }
}

TEST(SensitivityCommandTest, TableTellsTheRulesVerdictAndItsThresholds) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(small + " --csv lines.csv");
    EXPECT_EQ(outcome.err, "");
    EXPECT_THAT(outcome.out, HasSubstr("tone_level / 2"));
    EXPECT_THAT(outcome.out, HasSubstr("undecided"));  // one stop
    EXPECT_THAT(outcome.out, HasSubstr("rank correlation of best place with stop at most -0.8"));
    EXPECT_EQ(std::ranges::count(tests::contents(bowband.file("lines.csv")), '\n'), 6);
}

}  // namespace
