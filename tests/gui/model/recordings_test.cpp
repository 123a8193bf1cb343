// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/export.hpp"
#include "gui/model/note_band.hpp"
#include "gui/model/played_tone.hpp"
#include "gui/model/recorded_notes.hpp"
#include "sim/demo_recordings.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>
#include <QAbstractItemModelTester>

namespace {

using gui::recording_answer;
using Mode = QAbstractItemModelTester::FailureReportingMode;

gui::RecordingQuestion demo() {
    return {sim::find_recording("bow_follows.flac"), gui::tuning_beside(*tests::division_viol())};
}

/// expects  the answer of the command, with progress rising to the end
TEST(RecordingAnswerTest, SaysWhatTheCommandSays) {
    double last = 0.0;
    const auto answer = recording_answer(demo(), {.threads = 2, .progress = [&](double share) {
                                                      EXPECT_GE(share, last);
                                                      last = share;
                                                  }});
    const auto told = analysis::analyse_file(demo().file, answer.asked.plan);
    EXPECT_TRUE(answer.recording.notes == told.notes);
    EXPECT_EQ(answer.recording.track, told.track);
    EXPECT_EQ(answer.recording.warnings, told.warnings);
    EXPECT_NEAR(last, 1.0, 0.01);
    EXPECT_EQ(answer.asked.tuning.reference_pitch, 415.0);
    EXPECT_FALSE(answer.asked.file_hash.empty());
}

TEST(RecordingAnswerTest, EndsWhenAsked) {
    std::stop_source stop;
    stop.request_stop();
    EXPECT_THROW(recording_answer(demo(), {.stop = stop.get_token()}), sim::Stopped);
}

/// Qt's tester ends the program at the first broken promise of a model.
TEST(RecordedNotesTest, KeepsTheRulesOfItemModelsAndTellsEveryNote) {
    gui::RecordedNotes notes(gui::ScreenText(QLocale::c()));
    const QAbstractItemModelTester tester(&notes, Mode::Fatal);
    EXPECT_EQ(notes.rowCount(), 0);
    const auto answer = std::make_shared<const gui::RecordingAnswer>(recording_answer(demo(), {}));
    notes.set_answer(answer);
    ASSERT_EQ(notes.rowCount(), static_cast<int>(answer->recording.notes.size()));
    ASSERT_GT(notes.rowCount(), 0);
    const auto shown = [&](int column) { return notes.index(0, column).data().toString(); };
    EXPECT_EQ(shown(gui::RecordedNotes::pitch), QString::number(answer->recording.notes[0].tone->hz, 'f', 1));
    EXPECT_FALSE(shown(gui::RecordedNotes::motion).isEmpty());
    for (int column = 0; column < notes.columnCount(); ++column)
        EXPECT_FALSE(notes.headerData(column, Qt::Horizontal, Qt::ToolTipRole).toString().isEmpty()) << column;
}

constexpr gui::WantedTone wanted{.hz = 440.0, .tolerance_cents = 20.0, .best_brightness = 4.0, .brightness_ratio = 0.6};

TEST(PlayedToneTest, KeepsItsToneInTuneAndBright) {
    const auto verdict = gui::judge_tone({.hz = 442.0, .brightness_f0 = 3.0}, wanted);
    EXPECT_NEAR(verdict.cents, 7.85, 0.01);
    EXPECT_TRUE(verdict.keeps());
    EXPECT_DOUBLE_EQ(*verdict.share, 0.75);
}

TEST(PlayedToneTest, TellsFlatDullAndOtherNotes) {
    EXPECT_FALSE(gui::judge_tone({.hz = 433.0, .brightness_f0 = 3.0}, wanted).in_tune);
    const auto dull = gui::judge_tone({.hz = 440.0, .brightness_f0 = 2.3}, wanted);
    EXPECT_TRUE(dull.in_tune);
    EXPECT_FALSE(*dull.bright);
    EXPECT_FALSE(dull.keeps());
    EXPECT_TRUE(gui::judge_tone({.hz = 466.2, .brightness_f0 = 3.0}, wanted).another_note);
}

/// expects  without a known best, nothing to be said of brightness
TEST(PlayedToneTest, JudgesPitchAloneWhereTheBestIsNotKnown) {
    const auto verdict = gui::judge_tone({.hz = 440.0, .brightness_f0 = 1.0},
                                         gui::wanted_tone(440.0, tests::division_viol()->player, nullptr));
    EXPECT_TRUE(verdict.keeps());
    EXPECT_FALSE(verdict.bright);
}

}  // namespace
