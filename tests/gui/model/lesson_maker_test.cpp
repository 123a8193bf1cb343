// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/lesson_maker.hpp"

#include "gui/model/selection.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>
#include <QFile>
#include <QTemporaryDir>

namespace {

gui::LessonWish small_wish() {
    gui::LessonWish wish;
    wish.question = {.preset = tests::division_viol(), .string_index = 0, .stop = 0.0, .speed = 0.25};
    wish.lowest = 11;
    wish.highest = 12;
    wish.heard = {11.0, 12.0};
    wish.seconds = 0.3;
    wish.grid = {.contact_points = 6, .player_forces = 2, .more_forces = 0};
    return wish;
}

/// A maker without charts, and what it tells.
struct Told {
    gui::LessonMaker maker{[this](const gui::LessonAnswer&) {
                               ++drawn;
                               return std::vector<sim::report::PageChart>();
                           },
                           2};
    int drawn = 0;
    QString made;
    QString failed;

    Told() {
        QObject::connect(&maker, &gui::LessonMaker::made, &maker, [this](const QString& file) { made = file; });
        QObject::connect(&maker, &gui::LessonMaker::failed, &maker, [this](const QString& why) { failed = why; });
    }
};

/// expects  a page whose run the command can repeat: the window's speed and stops stand in it
TEST(LessonMakerTest, MakesAPageThatCanBeAskedAgain) {
    const QTemporaryDir folder;
    const QString file = folder.filePath("lesson.html");
    Told told;
    told.maker.make(small_wish(), file.toStdString());
    ASSERT_TRUE(tests::wait_until([&] { return !told.made.isEmpty() || !told.failed.isEmpty(); }));
    EXPECT_EQ(told.made, file) << told.failed.toStdString();
    EXPECT_EQ(told.drawn, 1);
    const sim::report::RunRecord run = sim::report::read_run(file.toStdString(), "lesson");
    EXPECT_EQ(std::get<double>(run.settings.at("speed_m_s")), 0.25);
    EXPECT_EQ(std::get<std::string>(run.settings.at("hear_stops_semitones")), "11,12");
    EXPECT_EQ(std::get<sim::report::Span>(run.settings.at("stop_semitones")), (sim::report::Span{11.0, 12.0}));
}

TEST(LessonMakerTest, AFolderThatIsNotThereIsToldBeforeTheWork) {
    Told told;
    told.maker.make(small_wish(), "/no/such/folder/lesson.html");
    ASSERT_TRUE(tests::wait_until([&] { return !told.failed.isEmpty(); }));
    EXPECT_TRUE(told.failed.contains("/no/such/folder/lesson.html")) << told.failed.toStdString();
    EXPECT_EQ(told.drawn, 0);
}

TEST(LessonMakerTest, GivenUpItWritesNothing) {
    const QTemporaryDir folder;
    Told told;
    gui::LessonWish wish = small_wish();
    wish.grid = sim::ClimbPlan{}.grid;
    told.maker.make(wish, folder.filePath("lesson.html").toStdString());
    told.maker.stop();
    ASSERT_TRUE(tests::wait_until([&] { return !told.maker.busy(); }));
    EXPECT_TRUE(told.made.isEmpty());
    EXPECT_FALSE(QFile::exists(folder.filePath("lesson.html")));
}

TEST(LessonMakerTest, StopsAreNamedAndTheUsualOnesMarked) {
    const gui::Selection selection(tests::division_viol());
    const std::vector<gui::LessonStop> stops = gui::lesson_stops(selection, 0, 12);
    ASSERT_EQ(stops.size(), 13U);
    EXPECT_EQ(stops.front(), (gui::LessonStop{0, "open · D4", true}));
    EXPECT_EQ(stops[5], (gui::LessonStop{5, "5 · G4", false}));
    EXPECT_EQ(stops[12], (gui::LessonStop{12, "12 · D5", true}));
    EXPECT_TRUE(gui::lesson_stops(selection, 3, 2).empty());
}

}  // namespace
