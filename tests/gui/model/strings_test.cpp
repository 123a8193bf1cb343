// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/gauges_table.hpp"
#include "gui/model/selection.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>
#include <QAbstractItemModelTester>

#include <cmath>

namespace {

using gui::GaugesTable;
using gui::StringsAnswer;
using Mode = QAbstractItemModelTester::FailureReportingMode;

/// A small study, played quickly.
std::shared_ptr<const StringsAnswer> small_answer(bool whole_set) {
    const sim::Preset set_up = *tests::division_viol();
    sim::Preset now = set_up;
    now.reference_pitch *= std::exp2(2.0 / 12.0);
    const sim::GaugePlan plan{.stops = {0.0, 12.0},
                              .grid = {.contact_points = 3, .player_forces = 2, .more_forces = 0}};
    const auto answer = std::make_shared<StringsAnswer>();
    answer->asked.preset = now;
    answer->study = whole_set ? sim::find_set(set_up, now, plan, {.threads = 2})
                              : sim::find_gauges(set_up, now, {now.strings[0]}, plan, {.threads = 2});
    return answer;
}

QString cell(const GaugesTable& table, int row, const QString& heading) {
    for (int column = 0; column < table.columnCount(); ++column)
        if (table.headerData(column, Qt::Horizontal).toString() == heading)
            return table.index(row, column).data().toString();
    return "no such column";
}

/// expects  the set raised a tone: a row a string, the band first of each stop, the pull against the set-up
TEST(GaugesTableTest, KeepsTheRulesOfItemModelsAndReadsLikeTheSet) {
    GaugesTable table{gui::ScreenText(QLocale::c())};
    const QAbstractItemModelTester tester(&table, Mode::Fatal);
    EXPECT_EQ(table.rowCount(), 0);
    const auto answer = small_answer(true);
    table.set_answer(answer);
    ASSERT_EQ(table.rowCount(), 6);
    EXPECT_EQ(table.index(0, 0).data().toString(), "1 D4, gut 0.64 mm");
    EXPECT_EQ(table.headerData(1, Qt::Horizontal).toString(), "open: band, mm");
    EXPECT_TRUE(cell(table, 0, "All strings, N").endsWith("(+26.0 %)"))
        << cell(table, 0, "All strings, N").toStdString();
    EXPECT_EQ(cell(table, 0, "12: band, mm"),
              QString::fromStdString(sim::report::band_or_stretch(answer->study.rows[0].stops[1].band)));
    EXPECT_EQ(answer->study.cautions.front().key, "pull_above_set_up");
}

TEST(GaugesTableTest, CandidatesSayWhichIsThere) {
    GaugesTable table{gui::ScreenText(QLocale::c())};
    table.set_answer(small_answer(false));
    ASSERT_EQ(table.rowCount(), 1);
    EXPECT_EQ(table.index(0, 0).data().toString(), "now: gut 0.64 mm");
}

/// expects  other materials than the string's own, each once, and at its pull; without the wish its own, varied
TEST(StringsStudyTest, WishForOtherMaterialsLeavesTheOwnOut) {
    const sim::Preset preset = *tests::division_viol();
    const sim::PresetString& top = preset.strings[0];
    EXPECT_TRUE(gui::gauges_wished(top, {}).materials.empty());
    const auto candidates = sim::gauge_candidates(preset, top, gui::gauges_wished(top, {.other_materials = true}));
    ASSERT_EQ(candidates.size(), 4U);
    const double pull = sim::open_string(preset, top).tension;
    for (const sim::PresetString& candidate : candidates)
        EXPECT_NEAR(sim::open_string(preset, candidate).tension, pull, 1e-9);
}

}  // namespace
