// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/notes_table.hpp"
#include "gui/model/passage_study.hpp"
#include "gui/model/selection.hpp"
#include "tests/analysis/temporary_folder.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>
#include <QAbstractItemModelTester>

namespace {

using gui::Fineness;
using gui::NotesTable;
using gui::PassageAnswer;

gui::NoteQuestion on_the_treble() {
    const auto preset = std::make_shared<const sim::Preset>(sim::find_preset("treble_viol"));
    return {.preset = preset, .speed = preset->player.speed};
}

/// A coarse answer, worked out once.
const gui::PassageAnswerPointer& small_answer() {
    static const auto answer = std::make_shared<const PassageAnswer>(gui::passage_answer(
        on_the_treble(), "tempo=90 D5:1 A5 D6:1/2 C#5:1,string=2", Fineness::coarse, {.threads = 2}));
    return answer;
}

}  // namespace

TEST(NotesTableTest, KeepsTheRulesOfItemModelsAndReadsLikeThePassage) {
    NotesTable table{gui::ScreenText(QLocale::c())};
    const QAbstractItemModelTester tester(&table, QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(table.rowCount(), 0);
    table.set_answer(small_answer());
    ASSERT_EQ(table.rowCount(), 4);
    const auto cell = [&](int row, int column) { return table.index(row, column).data().toString(); };
    EXPECT_EQ(cell(0, NotesTable::note), "D5");
    EXPECT_EQ(cell(0, NotesTable::finger), "0");
    EXPECT_EQ(cell(3, NotesTable::string), "2");
    for (int row = 0; row < 4; ++row)
        for (int column = NotesTable::bow; column < table.columnCount(); ++column)
            EXPECT_FALSE(cell(row, column).isEmpty()) << row << ", " << column;
    table.set_answer(nullptr);
    EXPECT_EQ(table.rowCount(), 0);
}

TEST(PassageAnswerTest, ATuneThatCannotBePlayedSaysWhy) {
    for (const char* tune : {"D1:1", "nonsense", "no_such.musicxml"}) {
        const auto answer = std::make_shared<const PassageAnswer>(
            gui::passage_answer(on_the_treble(), tune, Fineness::coarse, {.threads = 1}));
        EXPECT_FALSE(answer->wrong.empty()) << tune;
        EXPECT_TRUE(gui::passage_files(answer).empty());
        EXPECT_TRUE(gui::passage_sentence(*answer).contains("can't be played"));
    }
}

/// expects  table, JSON and score, the sounds only of a fine answer; each file is written and holds something
TEST(PassageAnswerTest, FilesAreWritten) {
    const tests::TemporaryFolder folder;
    const std::vector<gui::Export> files = gui::passage_files(small_answer());
    ASSERT_EQ(files.size(), 3U);
    for (const gui::Export& file : files) {
        const auto place = folder / file.file_name.toStdString();
        file.write(place);
        EXPECT_GT(std::filesystem::file_size(place), 500U);
    }
}

/// expects  the study answers for the tune it was given last, and anew once the instrument is another
TEST(PassageStudyTest, FollowsTuneAndInstrument) {
    gui::Selection selection(on_the_treble().preset);
    gui::PassageStudy study(selection, 2);
    study.set_tune("D5:1");
    study.set_watched(true);
    ASSERT_TRUE(tests::wait_until([&] { return study.up_to_date(); }));
    EXPECT_EQ(study.answer()->asked.tune.tune.notes.size(), 1U);
    EXPECT_FALSE(study.answer()->takes.follows.samples.empty());
    study.set_tune("D5:1/2 E5");
    EXPECT_FALSE(study.up_to_date());
    ASSERT_TRUE(tests::wait_until([&] { return study.answer()->asked.tune.tune.notes.size() == 2; }));
    selection.set_preset(tests::division_viol());
    EXPECT_FALSE(study.up_to_date());
}
