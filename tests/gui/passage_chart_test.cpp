// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"
#include "tests/gui/scene_tools.hpp"

#include <gtest/gtest.h>
#include <QChart>
#include <QGraphicsScene>
#include <QGraphicsSimpleTextItem>

namespace {

using namespace gui::charts;
using namespace tests;

class PassageChartTest : public testing::Test {
    ChartSession session_;
};

/// A quarter a note, band and stretch by turns, two hand places.
PassageChart passage(int count) {
    PassageChart chart{.title = "a study", .subtitle = "an instrument"};
    for (int i = 0; i < count; ++i) {
        PassageNote note{.from_s = 0.5 * i, .to_s = 0.5 * i + 0.5, .name = "C#" + std::to_string(3 + i % 3)};
        note.finger = i % 5;
        note.stop_mm = 40.0 * (i % 7);
        note.best_mm = 80.0 - 5.0 * (i % 7);
        (i % 2 == 0 ? note.band : note.stretch) = ClimbBand{*note.best_mm - 15.0, *note.best_mm + 20.0};
        note.behind_fails = i % 7 == 6;
        chart.notes.push_back(note);
        chart.path.push_back({note.from_s, *note.best_mm});
    }
    chart.hand_places = {{0.0, 0.25 * count, "fret 1"}, {0.25 * count, 0.5 * count, "bare board"}};
    chart.left_behind_mm = 80.0;
    chart.remarks = {"Two sentences."};
    return chart;
}

/// Names of notes, as they stand in the picture.
std::vector<QRectF> names(const QGraphicsScene& scene) {
    std::vector<QRectF> found;
    for (const QGraphicsSimpleTextItem* text : tests::texts(scene))
        if (text->text().startsWith("C#")) found.push_back(text->sceneBoundingRect());
    return found;
}

/// expects  every name of 8, 24 and 60 notes, none on top of another, all on the paper
TEST_F(PassageChartTest, NamesStandClearOfEachOther) {
    for (const int count : {8, 24, 60}) {
        const auto scene = chart_scene(passage(count));
        const std::vector<QRectF> all = names(*scene);
        EXPECT_EQ(all.size(), static_cast<std::size_t>(count));
        for (std::size_t i = 0; i < all.size(); ++i) {
            EXPECT_TRUE(scene->sceneRect().contains(all[i]));
            for (std::size_t j = 0; j < i; ++j)
                EXPECT_FALSE(all[i].intersects(all[j])) << count << ": " << j << ", " << i;
        }
    }
}

TEST_F(PassageChartTest, SaysWhatItShowsAndWhatItLeavesOut) {
    const auto few = chart_scene(passage(24));
    for (const char* said :
         {"hand place 1: fret 1", "hand place 2: bare board", "contact band", "no band", "left behind", "time, s",
          "contact point, mm from the bridge", "stop, mm from the nut", "Two sentences."})
        EXPECT_TRUE(says(*few, said)) << said;
    EXPECT_FALSE(says(*few, "Only the first"));
    EXPECT_TRUE(says(*chart_scene(passage(70)), "Only the first 60 of 70 notes"));
}

/// expects  a chart without notes, as of a tune that can't be played, is an empty sheet and no crash
TEST_F(PassageChartTest, NothingToShow) {
    const auto scene = chart_scene(PassageChart{});
    EXPECT_EQ(plots(*scene).size(), 2U);
}

}  // namespace
