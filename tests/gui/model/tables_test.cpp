// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/preset_table.hpp"
#include "gui/model/stops_table.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>
#include <QAbstractItemModelTester>

namespace {

using gui::Instrument;
using gui::PresetTable;
using Mode = QAbstractItemModelTester::FailureReportingMode;

int row_of(const PresetTable& table, const std::string& pointer) {
    for (int row = 0; row < table.rowCount(); ++row)
        if (table.field(row).pointer == pointer) return row;
    return -1;
}

/// Qt's tester ends the program at the first broken promise of a model.
TEST(PresetTableTest, KeepsTheRulesOfItemModels) {
    Instrument instrument(sim::find_preset("division_bass_viol"));
    PresetTable table(instrument, QLocale::c());
    const QAbstractItemModelTester tester(&table, Mode::Fatal);
    ASSERT_TRUE(instrument.start_from("violin"));
    EXPECT_EQ(table.rowCount(), static_cast<int>(gui::preset_fields(*instrument.preset()).size()));
    ASSERT_TRUE(instrument.change({{"/hair_width_mm", gui::FieldValue(9.0), "measured"}}, "hair"));
    instrument.undo().undo();
}

TEST(PresetTableTest, ANumberIsReadAsTheUserWritesIt) {
    Instrument instrument(sim::find_preset("division_bass_viol"));
    PresetTable german(instrument, QLocale(QLocale::German));
    const int row = row_of(german, "/strings/0/gauge/diameter_mm");
    ASSERT_GE(row, 0);
    EXPECT_EQ(german.index(row, PresetTable::value).data().toString(), "0,64");
    EXPECT_EQ(german.index(row, PresetTable::unit).data().toString(), "mm");
    ASSERT_TRUE(german.setData(german.index(row, PresetTable::value), "0,66"));
    EXPECT_DOUBLE_EQ(*instrument.preset()->strings[0].gauge.diameter, 0.00066);
    EXPECT_EQ(german.index(row, PresetTable::source).data().toString(), QString(gui::typed_source));
    ASSERT_TRUE(german.setData(german.index(row, PresetTable::source), "measured with a gauge"));
    EXPECT_EQ(instrument.preset()->sources.at("/strings/0/gauge/diameter_mm"), "measured with a gauge");
}

TEST(PresetTableTest, WhatIsOutOfRangeIsRefusedWithItsRange) {
    Instrument instrument(sim::find_preset("division_bass_viol"));
    PresetTable table(instrument, QLocale::c());
    QStringList told;
    QObject::connect(&table, &PresetTable::refused, [&](const QString& message) { told.append(message); });
    const int row = row_of(table, "/player/wander_mm");
    EXPECT_FALSE(table.setData(table.index(row, PresetTable::value), "80"));
    EXPECT_FALSE(table.setData(table.index(row, PresetTable::value), "much"));
    ASSERT_EQ(told.size(), 2);
    EXPECT_TRUE(told[0].contains("50 mm")) << told[0].toStdString();
    EXPECT_FALSE(table.setData(table.index(row, PresetTable::what), "name"));
    EXPECT_FALSE(instrument.unsaved());
}

TEST(StopsTableTest, KeepsTheRulesOfItemModelsAndReadsLikeTheClimb) {
    gui::StopsTable table{gui::ScreenText(QLocale::c())};
    const QAbstractItemModelTester tester(&table, Mode::Fatal);
    EXPECT_EQ(table.rowCount(), 0);
    auto answer = std::make_shared<gui::ClimbAnswer>();
    answer->asked.reference_pitch = 415.0;
    answer->climb.player.finger_width = 0.017;
    const sim::Preset preset = sim::find_preset("division_bass_viol");
    sim::ClimbStop stop;
    stop.note = sim::make_note(preset, preset.strings.front(), 12.0);
    stop.from_nut = 0.345;
    stop.band.best = 0.034;
    stop.band.at_best.security = 0.875;
    stop.band.band = sim::Band{.near = 0.030, .far = 0.040};
    stop.left_behind.security.fails_by = sim::Fault::tone_weak;
    answer->climb.stops = {stop};
    table.set_answer(answer);
    ASSERT_EQ(table.rowCount(), 1);
    QStringList row;
    for (int column = 0; column < table.columnCount(); ++column) row.append(table.index(0, column).data().toString());
    EXPECT_EQ(row.join(" | "), QString::fromUtf8("12 | D5 | 345 | 34 | 2.0 | 30 – 40 | 88 % | 0 % | tone weak"));
}

}  // namespace
