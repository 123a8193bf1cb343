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
using gui::StringsWish;
using Mode = QAbstractItemModelTester::FailureReportingMode;

std::shared_ptr<const StringsAnswer> answer_to(const StringsWish& wish) {
    const gui::NoteQuestion question{.preset = tests::division_viol(), .string_index = 0, .stop = 0.0, .speed = 0.2};
    return std::make_shared<const StringsAnswer>(
        gui::strings_answer(question, wish, gui::Fineness::coarse, {.threads = 2}));
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
    const auto answer = answer_to({.whole_set = true, .raise = 2.0});
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

/// expects  the string's own gauge named among thinner and thicker ones; other materials at its pull
TEST(GaugesTableTest, CandidatesSayWhichIsThere) {
    GaugesTable table{gui::ScreenText(QLocale::c())};
    table.set_answer(answer_to({}));
    ASSERT_EQ(table.rowCount(), 7);
    int now = 0;
    for (int row = 0; row < table.rowCount(); ++row) now += table.index(row, 0).data().toString() == "now: gut 0.64 mm";
    EXPECT_EQ(now, 1);
    const auto others = answer_to({.other_materials = true});
    ASSERT_EQ(others->study.rows.size(), 4U);
    for (const sim::GaugeRow& row : others->study.rows)
        EXPECT_NEAR(row.open.tension, others->study.rows[0].open.tension, 1e-9);
}

}  // namespace
