// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/match/coverage.hpp"
#include "tests/reports/report_file.hpp"

#include <gtest/gtest.h>

#include <cstdio>

namespace {

tests::Coverage test_set(std::uint32_t seed, int recordings, int notes, double string_change = 0.0) {
    tests::CoveragePlan plan{.bowed = {.presets = tests::test_presets(),
                                       .seed = seed,
                                       .recordings = recordings,
                                       .notes = notes,
                                       .string_change = string_change}};
    return tests::covered(plan, {.threads = 2, .progress = {}, .stop = {}});
}

/// source   the simulation's own strokes, on six presets and bodies that the design has not seen
/// expects  100 recordings of one stroke: the true contact ratio in the 80 % region in 75 % of them (abstentions past a
///          fifth count as misses), and a median region narrower than a factor 1.6 for notes below 300 Hz
TEST(MatchCoverage, RegionsHoldTheTruePlaceAndAreNarrow) {
    const tests::Coverage alone = test_set(1001, 100, 1);
    const tests::Coverage together = test_set(1002, 6, 6);
    const tests::Coverage changed = test_set(1003, 18, 1, 0.3);
    const std::string table =
        tests::coverage_table({{"one note, 100 recordings", alone},
                               {"six notes over one body, 6 recordings", together},
                               {"one note, strings unlike the preset's, 18 recordings", changed}});
    std::printf("%s\n%s\n%s\n%s\n", table.c_str(), tests::coverage_lines(alone).c_str(),
                tests::coverage_lines(together).c_str(), tests::coverage_lines(changed).c_str());
    write_report("match.md", tests::coverage_report(table));
    const tests::CoverageFigures figures = figures_of(alone);
    EXPECT_EQ(figures.notes, 100);
    EXPECT_GE(figures.covered_share(), 0.75);
    EXPECT_LT(figures.median_width_low, 1.6);
}

}  // namespace
