// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/selection.hpp"

#include "gui/model/bow_guide.hpp"
#include "gui/model/note_band.hpp"
#include "gui/model/screen_text.hpp"
#include "gui/model/stage_scale.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>

namespace {

using gui::ScreenText;
using gui::Selection;
using tests::division_viol;

/// source   derived: 12 semitones halve the string; the division viol has 7 frets, then the finger stands where it
/// likes
TEST(SelectionTest, AFingerStandsOnFretsWhileThereAreSome) {
    Selection selection(division_viol());
    selection.set_stop(4.6);
    EXPECT_DOUBLE_EQ(selection.stop(), 5.0);
    selection.set_stop(12.0);
    EXPECT_DOUBLE_EQ(selection.sounding_length(), selection.open_length() / 2.0);
    selection.set_stop(9.33);
    EXPECT_NEAR(selection.stop(), 9.35, 1e-12);
    // 500 mm from the bridge lies between frets 5 (517 mm) and 6 (488 mm): pressed there, the string stops at fret 6
    EXPECT_DOUBLE_EQ(selection.stop_at(0.5), 6.0);
    EXPECT_NEAR(selection.stop_at(selection.open_length() / 2.0), 12.0, 1e-9);
}

/// expects  values from outside are brought into their ranges, and a signal comes only for a change
TEST(SelectionTest, KeepsEverythingInItsRange) {
    Selection selection(division_viol());
    int strokes = 0;
    QObject::connect(&selection, &Selection::stroke_changed, [&] { ++strokes; });
    selection.set_stop(99.0);
    EXPECT_DOUBLE_EQ(selection.stop(), selection.last_stop());
    selection.set_stop(-3.0);
    EXPECT_DOUBLE_EQ(selection.stop(), 0.0);
    selection.set_contact(0.0);
    EXPECT_DOUBLE_EQ(selection.contact(), selection.floor());
    strokes = 0;
    selection.set_contact(0.001);
    EXPECT_EQ(strokes, 0);
    selection.set_contact(10.0);
    EXPECT_DOUBLE_EQ(selection.contact(), selection.farthest());
    selection.set_force(100.0);
    EXPECT_DOUBLE_EQ(selection.force(), selection.firmest());
    selection.set_string_index(17);
    EXPECT_EQ(selection.string().name, "6");
}

/// expects  a finger that climbs past a bow left behind pushes it along, and leaves it where it was on the way back
TEST(SelectionTest, ABowLeftBehindComesBackToItsPlace) {
    Selection selection(division_viol());
    selection.set_contact(0.15);
    selection.set_stop(selection.last_stop());
    EXPECT_LT(selection.contact(), 0.15);
    EXPECT_DOUBLE_EQ(selection.contact(), selection.farthest());
    selection.set_stop(0.0);
    EXPECT_DOUBLE_EQ(selection.contact(), 0.15);
}

/// expects  places and pixels go into each other; the marks run from the nut to the bridge
TEST(StageScaleTest, DrawsTheStringToScale) {
    Selection selection(division_viol());
    const gui::StageScale scale{.left = 100.0, .right = 790.0, .length = selection.open_length()};
    EXPECT_NEAR(scale.pixels_per_metre(), 1000.0, 1e-9);
    EXPECT_NEAR(scale.from_bridge(scale.x(0.123)), 0.123, 1e-12);
    const auto marks = gui::stage_marks(selection);
    ASSERT_EQ(marks.size(), 1u + 7u + 1u + 1u + 1u);
    EXPECT_EQ(marks.front().kind, gui::StageMark::Kind::nut);
    EXPECT_DOUBLE_EQ(marks[8].from_bridge, selection.open_length() / 2.0);
    EXPECT_NEAR(marks[9].from_bridge, 0.28 * selection.open_length(), 1e-9);
    for (std::size_t i = 1; i < marks.size(); ++i) EXPECT_LT(marks[i].from_bridge, marks[i - 1].from_bridge);
    const std::vector<double> steps = gui::ruler_steps({.left = 0, .right = 600, .length = 0.3}, 50.0);
    ASSERT_GE(steps.size(), 2u);
    EXPECT_NEAR(steps[1], 0.05, 1e-12);  // 20 mm would stand 40 px apart
}

TEST(StageScaleTest, ForcesAndHeightsGoIntoEachOther) {
    const gui::ForceScale scale{.top = 10.0, .bottom = 210.0, .lightest = 0.1, .firmest = 10.0};
    EXPECT_DOUBLE_EQ(scale.y(0.1), 210.0);
    EXPECT_DOUBLE_EQ(scale.y(1.0), 110.0);
    EXPECT_NEAR(scale.force(scale.y(3.7)), 3.7, 1e-12);
    EXPECT_DOUBLE_EQ(scale.force(-50.0), 10.0);
    EXPECT_EQ(gui::cell_edges({1.0, 4.0, 16.0}), (std::vector{0.5, 2.0, 8.0, 32.0}));
}

/// expects  a German player's comma on screen, and no sign before nothing
TEST(ScreenTextTest, NumbersAreTheUsersOwn) {
    const ScreenText german(QLocale(QLocale::German));
    EXPECT_EQ(german.newtons(0.25), "0,250 N");
    EXPECT_EQ(german.mm(0.0423), "42 mm");
    const ScreenText plain(QLocale::c());
    EXPECT_EQ(plain.signed_number(0.04, 1), "0.0");
    EXPECT_EQ(plain.signed_number(-0.04, 1), "0.0");
    EXPECT_EQ(plain.signed_number(2.5, 1), "+2.5");
    EXPECT_EQ(plain.stop(0.0), "open");
    EXPECT_EQ(plain.stop(9.35), "9.35");
}

/// expects  a band from few contact points first, then one from many, both of the note selected last
TEST(BandFinderTest, GivesACoarseBandAndThenAFineOne) {
    Selection selection(division_viol());
    gui::BandFinder finder(selection, 2);
    std::vector<gui::NoteBandPointer> found;
    QObject::connect(&finder, &gui::BandFinder::found,
                     [&](const gui::NoteBandPointer& band) { found.push_back(band); });
    selection.set_stop(12.0);
    ASSERT_TRUE(tests::wait_until([&] { return !found.empty() && found.back()->fine; }));
    ASSERT_EQ(found.size(), 2u);
    EXPECT_FALSE(found.front()->fine);
    for (const gui::NoteBandPointer& band : found) {
        EXPECT_DOUBLE_EQ(band->stop, 12.0);
        EXPECT_TRUE(band->band.best.has_value());
        EXPECT_EQ(band->cells.size(), band->contacts.size() * band->forces.size());
        EXPECT_FALSE(ScreenText(QLocale::c()).band_sentence(*band, selection.player()).isEmpty());
    }
}

/// expects  the first band puts the bow; left behind it stays while the finger climbs; it follows, and comes back to
///          where it was left
TEST(BowGuideTest, TheBowStaysFollowsAndComesBack) {
    Selection selection(division_viol());
    gui::BandFinder finder(selection, 2);
    gui::BowGuide guide(selection, finder);
    const auto settle = [&] {
        return tests::wait_until([&] { return finder.band() && finder.band()->fine && !finder.runner().busy(); });
    };
    finder.ask();
    ASSERT_TRUE(settle());
    const double open_best = *finder.band()->band.best;
    EXPECT_DOUBLE_EQ(selection.contact(), open_best);
    selection.set_stop(12.0);
    ASSERT_TRUE(settle());
    EXPECT_DOUBLE_EQ(selection.contact(), open_best);
    guide.change_way();
    EXPECT_DOUBLE_EQ(selection.contact(), *finder.band()->band.best);
    EXPECT_LT(selection.contact(), open_best);
    guide.change_way();
    EXPECT_DOUBLE_EQ(selection.contact(), open_best);
    guide.put_by_hand(0.05);
    EXPECT_DOUBLE_EQ(selection.contact(), 0.05);
    EXPECT_EQ(selection.bow_way(), gui::BowWay::left_behind);
}

}  // namespace
