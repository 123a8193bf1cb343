// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"
#include "gui/charts/shades.hpp"
#include "tests/gui/chart_samples.hpp"
#include "tests/gui/scene_tools.hpp"

#include <gtest/gtest.h>
#include <QChart>
#include <QGraphicsScene>
#include <QGraphicsSimpleTextItem>
#include <QImage>
#include <QPainter>

#include <algorithm>
#include <cmath>
#include <limits>

namespace {

using namespace gui::charts;
using namespace tests;

class ToneChartsTest : public testing::Test {
    ChartSession session_;
};

/// Mean grey of a plot's middle, 0 … 255.
double mean_grey(const QImage& image, const QChart& plot) {
    const QRect area = plot.plotArea().adjusted(20, 20, -20, -20).toRect();
    double sum = 0.0;
    for (int x = area.left(); x <= area.right(); ++x)
        for (int y = area.top(); y <= area.bottom(); ++y) sum += qGray(image.pixel(x, y));
    return sum / (area.width() * area.height());
}

/// A map of one tone everywhere.
ToneMapChart flat_map(double cents, double clarity_db, bool speaks) {
    ToneMapChart chart;
    for (const double mm : {10.0, 20.0, 40.0})
        for (const double force : {0.1, 0.2, 0.4})
            chart.cells.push_back({.contact_mm = mm,
                                   .force_newtons = force,
                                   .speaks = speaks,
                                   .pitch_cents = cents,
                                   .brightness_f0 = 4.0,
                                   .level_db = -20.0,
                                   .clarity_db = clarity_db});
    return chart;
}

TEST(ShadesTest, SortsValuesIntoStepsAndNamesThem) {
    const Shades shades({-50.0, -20.0, 5.0}, true);
    EXPECT_EQ(shades.count(), 4U);
    EXPECT_EQ(shades.step_of(-60.0), 0U);
    EXPECT_EQ(shades.step_of(-50.0), 1U);
    EXPECT_EQ(shades.step_of(0.0), 2U);
    EXPECT_EQ(shades.step_of(7.0), 3U);
    EXPECT_EQ(shades.label(0), "under −50");
    EXPECT_EQ(shades.label(1), "−50 to −20");
    EXPECT_EQ(shades.label(3), "5 and more");
}

/// expects  neighbouring steps to differ by 15 of 255 in grey, whatever their number
TEST(ShadesTest, CanBeToldApartInGrey) {
    for (std::size_t edges = 1; edges <= 5; ++edges) {
        std::vector<double> at(edges);
        for (std::size_t i = 0; i < edges; ++i) at[i] = static_cast<double>(i);
        const Shades shades(at, false);
        for (std::size_t i = 1; i < shades.count(); ++i)
            EXPECT_GT(qGray(shades.colour(i - 1).rgb()) - qGray(shades.colour(i).rgb()), 15) << edges;
        const Shades turned(at, true);
        EXPECT_EQ(turned.colour(0), shades.colour(shades.count() - 1));
    }
}

TEST(ShadesTest, RoundEdgesLieWithinTheValuesAndMakeAtMostSixSteps) {
    std::vector<double> values;
    for (int i = 0; i <= 100; ++i) values.push_back(-37.3 + 0.41 * i);
    values.push_back(1e6);  // one stray value does not stretch the steps
    const std::vector<double> edges = round_edges(values);
    EXPECT_GE(edges.size(), 3U);
    EXPECT_LE(edges.size(), 5U);
    for (const double edge : edges) {
        EXPECT_GT(edge, -37.3);
        EXPECT_LT(edge, 4.0);
        EXPECT_NEAR(edge, std::round(edge), 1e-9);
    }
    EXPECT_TRUE(round_edges({}).empty());
    EXPECT_TRUE(round_edges({2.0, 2.0}).empty());
    EXPECT_TRUE(round_edges({std::numeric_limits<double>::quiet_NaN()}).empty());
}

TEST_F(ToneChartsTest, FourMapsStandOverTheSameWindow) {
    const auto scene = chart_scene(tests::bass_tone_map());
    ASSERT_EQ(plots(*scene).size(), 4U);
    for (const char* text :
         {"flattening: pitch, cents from the note", "brightness: centroid, fundamentals", "level, dB re 1 N",
          "clarity of pitch, dB", "contact point, mm from the bridge", "bow force, N", "does not speak in time",
          "no pitch, or clarity under 0 dB", "under −50", "40 and more"})
        EXPECT_TRUE(says(*scene, text)) << text;
}

/// expects  a flat tone to be darker than one in tune in the first map, an unclear one paler in the last
TEST_F(ToneChartsTest, ShadesFollowTheValues) {
    const auto good = chart_scene(flat_map(0.0, 45.0, true));
    const auto bad = chart_scene(flat_map(-80.0, 1.0, true));
    const QImage good_picture = picture(*good);
    const QImage bad_picture = picture(*bad);
    EXPECT_GT(mean_grey(good_picture, *plots(*good)[0]), mean_grey(bad_picture, *plots(*bad)[0]) + 100.0);
    EXPECT_LT(mean_grey(good_picture, *plots(*good)[3]), mean_grey(bad_picture, *plots(*bad)[3]) - 100.0);
}

/// expects  no shade for the pitch of what is more noise than tone, whatever pitch was found in it
TEST_F(ToneChartsTest, PitchOfAnUnclearSoundIsNotShown) {
    const auto clear = chart_scene(flat_map(-80.0, 1.0, true));
    const auto unclear = chart_scene(flat_map(-80.0, -1.0, true));
    EXPECT_GT(mean_grey(picture(*unclear), *plots(*unclear)[0]), mean_grey(picture(*clear), *plots(*clear)[0]) + 100.0);
}

/// expects  strokes across cells that don't speak, on the palest shade and on the darkest
TEST_F(ToneChartsTest, CellsThatDoNotSpeakAreHatchedOnEveryShade) {
    for (const double cents : {0.0, -80.0}) {
        const auto spoken = chart_scene(flat_map(cents, 45.0, true));
        const auto unspoken = chart_scene(flat_map(cents, 45.0, false));
        const QImage before = picture(*spoken);
        const QImage after = picture(*unspoken);
        const QRect area = plots(*spoken)[0]->plotArea().adjusted(20, 20, -20, -20).toRect();
        int changed = 0;
        for (int x = area.left(); x <= area.right(); ++x)
            for (int y = area.top(); y <= area.bottom(); ++y)
                if (std::abs(qGray(before.pixel(x, y)) - qGray(after.pixel(x, y))) > 40) ++changed;
        EXPECT_GT(changed, area.width() * area.height() / 10) << cents;
    }
}

TEST_F(ToneChartsTest, CellsThatCannotStandOnLogarithmicAxesAreLeftOut) {
    ToneMapChart chart = tests::bass_tone_map();
    const auto before = picture(*chart_scene(chart));
    chart.cells.push_back({.contact_mm = 0.0, .force_newtons = 0.2});
    chart.cells.push_back({.contact_mm = 30.0, .force_newtons = std::numeric_limits<double>::quiet_NaN()});
    EXPECT_EQ(picture(*chart_scene(chart)), before);
}

TEST_F(ToneChartsTest, StackHasAPlotForEachPanelWithOneAxisBelowThemAll) {
    const auto scene = chart_scene(tests::stack_sample(3));
    const std::vector<QChart*> panels = plots(*scene);
    ASSERT_EQ(panels.size(), 3U);
    for (const QChart* panel : panels) EXPECT_EQ(panel->plotArea().left(), panels.front()->plotArea().left());
    for (const char* text : {"bow speed, m/s", "panel 0", "panel 2", "stop 19 (A5)", "contact band, near to far",
                             "no band: the most secure stretch", "nothing speaks"})
        EXPECT_TRUE(says(*scene, text)) << text;
}

/// expects  a bar from low to high at its point, and none where it has been taken away
TEST_F(ToneChartsTest, BarsReachFromLowToHigh) {
    StackChart chart{.x = {.title = "x"}, .names = {"line"}};
    StackPanel panel{.title = {}, .y = {.title = "y"}, .lines = {{}}};
    for (const double x : {1.0, 2.0, 3.0}) panel.lines[0].push_back({.x = x, .y = 5.0, .low = 2.0, .high = 9.0});
    chart.panels = {panel};
    const auto with = chart_scene(chart);
    const QImage image = picture(*with);
    QChart* plot = plots(*with).front();
    const auto dark = [&](double y) {
        const QPoint place = plot->mapToPosition(QPointF(2.0, y)).toPoint();
        int count = 0;
        for (int dx = -3; dx <= 3; ++dx) count += qGray(image.pixel(place + QPoint(dx, 0))) < 160 ? 1 : 0;
        return count;
    };
    EXPECT_GT(dark(3.0), 0);
    EXPECT_GT(dark(8.0), 0);
    EXPECT_EQ(dark(1.7), 0);
    EXPECT_EQ(dark(9.3), 0);
}

}  // namespace
