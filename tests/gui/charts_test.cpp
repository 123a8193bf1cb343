// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/save.hpp"

#include "gui/charts/session.hpp"
#include "tests/gui/chart_samples.hpp"
#include "tests/gui/scene_tools.hpp"

#include <gtest/gtest.h>
#include <QChart>
#include <QGraphicsScene>
#include <QGraphicsSimpleTextItem>
#include <QImage>
#include <QPainter>
#include <QXYSeries>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

namespace {

using namespace gui::charts;
using namespace tests;

class ChartsTest : public testing::Test {
    ChartSession session_;
};

/// How many pixels are nearly black within `reach` of a place.
int dark_pixels(const QImage& image, QPointF place, int reach) {
    int count = 0;
    for (int x = static_cast<int>(place.x()) - reach; x <= place.x() + reach; ++x)
        for (int y = static_cast<int>(place.y()) - reach; y <= place.y() + reach; ++y)
            if (qGray(image.pixel(x, y)) < 80) ++count;
    return count;
}

/// A pixel's width is given away: boxes are rounded up.
QRectF box_of(const QGraphicsItem& item) { return item.sceneBoundingRect().adjusted(0.5, 0.5, -0.5, -0.5); }

TEST_F(ChartsTest, NoTextTouchesAnother) {
    for (const auto& sample : tests::all_samples()) {
        const auto scene = chart_scene(sample.chart);
        const auto items = texts(*scene);
        for (std::size_t i = 0; i < items.size(); ++i)
            for (std::size_t j = 0; j < i; ++j)
                EXPECT_FALSE(box_of(*items[i]).intersects(box_of(*items[j])))
                    << sample.name << ": " << qPrintable(items[i]->text()) << " | " << qPrintable(items[j]->text());
    }
}

TEST_F(ChartsTest, NoTextLeavesTheSheetOrReachesIntoAPlot) {
    for (const auto& sample : tests::all_samples()) {
        const auto scene = chart_scene(sample.chart);
        ASSERT_FALSE(plots(*scene).empty());
        for (const auto* text : texts(*scene)) {
            EXPECT_TRUE(scene->sceneRect().contains(box_of(*text))) << sample.name << ": " << qPrintable(text->text());
            for (const auto* plot : plots(*scene))
                EXPECT_FALSE(plot->plotArea().intersects(box_of(*text)))
                    << sample.name << ": " << qPrintable(text->text());
        }
    }
}

TEST_F(ChartsTest, EveryPlotHasATitledAxisWithTicks) {
    const auto scene = chart_scene(tests::bass_window());
    EXPECT_TRUE(says(*scene, "contact point, mm from the bridge"));
    EXPECT_TRUE(says(*scene, "bow force, N"));
    for (const char* tick : {"10", "20", "50", "100", "200", "0.1", "0.2", "0.5", "1"}) {
        const auto items = texts(*scene);
        EXPECT_TRUE(std::any_of(items.begin(), items.end(), [&](auto* text) { return text->text() == tick; })) << tick;
    }
}

/// The limits of the sample run far beyond the axes; what is drawn of them must not.
TEST_F(ChartsTest, LinesAreCutAtTheAxes) {
    const auto scene = chart_scene(tests::bass_window());
    const QRectF area = plots(*scene).front()->plotArea().adjusted(-0.1, -0.1, 0.1, 0.1);
    int points = 0;
    for (QAbstractSeries* series : plots(*scene).front()->series()) {
        auto* line = dynamic_cast<QXYSeries*>(series);
        ASSERT_NE(line, nullptr);
        for (const QPointF& point : line->points()) {
            const QPointF place = plots(*scene).front()->mapToPosition(point, line);
            EXPECT_TRUE(area.contains(place)) << place.x() << " " << place.y();
            ++points;
        }
    }
    EXPECT_GT(points, 50);
}

TEST_F(ChartsTest, WindowWithoutABandSaysWhy) {
    const QString reason = "No contact band: nowhere do four strokes of five speak and keep their tone";
    EXPECT_TRUE(says(*chart_scene(tests::bandless_window()), reason));
    EXPECT_FALSE(says(*chart_scene(tests::bass_window()), "No contact band"));
}

/// A black cross stands on the axis of the upper plot at those stops only.
TEST_F(ChartsTest, StopWithoutABandIsMarked) {
    const auto scene = chart_scene(tests::climb_sample(12, 60.0, {4, 7}));
    const QImage image = picture(*scene);
    QChart* plot = plots(*scene).front();
    for (int stop = 0; stop < 12; ++stop) {
        const double x = plot->mapToPosition(QPointF(stop, 0.0)).x();
        const int dark = dark_pixels(image, {x, plot->plotArea().bottom() - 10.0}, 6);
        if (stop == 4 || stop == 7) {
            EXPECT_GT(dark, 12) << stop;
        } else {
            EXPECT_EQ(dark, 0) << stop;
        }
    }
    EXPECT_TRUE(says(*scene, "No band at stop 4: nothing speaks"));
    EXPECT_TRUE(says(*scene, "No band at stop 7: no place is secure enough"));
}

TEST_F(ChartsTest, StopsOfOneReasonAreNamedTogether) {
    const auto scene = chart_scene(tests::climb_sample(14, 60.0, {0, 3, 4, 7, 9, 10, 11}));
    EXPECT_TRUE(says(*scene, "No band at stop 0: nothing speaks"));
    EXPECT_TRUE(says(*scene, "No band at stops 3, 4, 7, 9 to 11: no place is secure enough"));
}

TEST_F(ChartsTest, NotesThatFindNoRoomAreOwnedUpTo) {
    ClimbChart chart = tests::climb_sample(8, 60.0, {});
    chart.notes = {"a short note"};
    EXPECT_FALSE(says(*chart_scene(chart), "… and more"));
    chart.notes.insert(chart.notes.begin(), 60, "one note of many");
    EXPECT_TRUE(says(*chart_scene(chart), "… and more"));
}

TEST_F(ChartsTest, ClimbWithoutAnyBandSaysSo) {
    EXPECT_TRUE(says(*chart_scene(tests::climb_sample(4, 25.0, {0, 1, 2, 3})), "No contact band at any stop."));
    EXPECT_FALSE(says(*chart_scene(tests::climb_sample(4, 25.0, {0, 1, 2})), "No contact band at any stop."));
}

/// Grey alone tells them apart: the measured line is pale and broad, the fitted one dark, and each mode has a mark.
TEST_F(ChartsTest, MeasuredAndFittedAdmittanceDifferInGrey) {
    const auto count = [](const BridgeChart& chart, int from, int to) {
        const auto scene = chart_scene(chart);
        const QImage image = picture(*scene).copy(plots(*scene).front()->plotArea().toRect());
        int found = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x)
                if (qGray(image.pixel(x, y)) >= from && qGray(image.pixel(x, y)) < to) ++found;
        return found;
    };
    const BridgeChart whole = tests::bridge_sample(600);
    BridgeChart measured = whole;
    measured.fitted.clear();
    BridgeChart fitted = whole;
    fitted.measured.clear();
    EXPECT_GT(count(measured, 170, 190), 5 * count(fitted, 170, 190));
    EXPECT_GT(count(fitted, 40, 110), 2 * count(measured, 40, 110));
    EXPECT_TRUE(says(*chart_scene(whole), "admittance, dB re 1 m/s/N"));
    EXPECT_TRUE(says(*chart_scene(whole), "phase, degrees"));
    EXPECT_TRUE(says(*chart_scene(whole), "frequency, Hz"));
}

/// Eight kinds of stroke, each drawn alone and reduced to black and white: no two pictures are the same.
TEST_F(ChartsTest, MotionsDifferByShapeAlone) {
    std::vector<WindowCell> kinds;
    for (const CellMotion motion : {CellMotion::helmholtz, CellMotion::multiple_slip, CellMotion::raucous,
                                    CellMotion::anomalous_low, CellMotion::s_motion, CellMotion::silent})
        kinds.push_back({30.0, 0.2, motion, false, false});
    kinds.push_back({30.0, 0.2, CellMotion::helmholtz, true, false});
    kinds.push_back({30.0, 0.2, CellMotion::helmholtz, true, true});
    std::set<std::string> pictures;
    for (const WindowCell& kind : kinds) {
        WindowChart chart{.cells = {kind}};
        chart.band = BandStrip{10.0, 11.0, "", ""};
        chart.player_force = ForceRange{0.1, 1.0};
        const auto scene = chart_scene(chart);
        const QImage image = picture(*scene);
        QChart* plot = plots(*scene).front();
        const QPoint place = plot->mapToPosition(QPointF(std::log10(30.0), std::log10(0.2))).toPoint();
        std::string shape;
        for (int y = -8; y <= 8; ++y)
            for (int x = -8; x <= 8; ++x) shape += qGray(image.pixel(place + QPoint(x, y))) < 190 ? '#' : '.';
        EXPECT_GT(std::count(shape.begin(), shape.end(), '#'), 3);
        pictures.insert(shape);
    }
    EXPECT_EQ(pictures.size(), kinds.size());
}

/// In grey: where the change up takes a constant is filled dark, where the change down takes it is mostly white.
TEST_F(ChartsTest, TornadoTellsUpFromDownWithoutColour) {
    TornadoChart chart = tests::tornado_sample(0);
    for (TornadoPanel& panel : chart.panels) panel.noise.reset();
    chart.rows = {{"one", {{2.0, 0.5}, {2.0, 0.5}, {2.0, 0.5}}}};
    const auto scene = chart_scene(chart);
    const QImage image = picture(*scene);
    QChart* plot = plots(*scene).front();
    const auto grey = [&](double ratio, double height) {
        const QPoint place = plot->mapToPosition(QPointF(std::log10(ratio), height)).toPoint();
        double sum = 0.0;
        for (int x = -8; x <= 8; ++x)
            for (int y = -8; y <= 8; ++y) sum += qGray(image.pixel(place + QPoint(x, y)));
        return sum / (17.0 * 17.0);
    };
    EXPECT_LT(grey(1.5, 0.7), 110.0);  // up, to the right of 1
    EXPECT_GT(grey(0.7, 0.3), 140.0);  // down, to the left, hatched
    EXPECT_LT(grey(0.7, 0.3), 220.0);
    EXPECT_GT(grey(0.7, 0.7), 245.0);  // nothing beside them
    EXPECT_GT(grey(1.5, 0.3), 245.0);
}

TEST_F(ChartsTest, TornadoMarksWhatHasNoValueAndNamesRowsAndUnit) {
    const auto scene = chart_scene(tests::tornado_sample(5));
    EXPECT_TRUE(says(*scene, "nothing plays"));
    EXPECT_TRUE(says(*scene, "constant number 4"));
    EXPECT_TRUE(says(*scene, "times the unchanged"));
    TornadoChart whole = tests::tornado_sample(5);
    whole.rows.front().bars.front().down = 1.1;
    whole.rows.pop_back();
    EXPECT_FALSE(says(*chart_scene(whole), "nothing plays"));
}

TEST_F(ChartsTest, WhatCannotStandOnALogarithmicAxisIsLeftOut) {
    WindowChart chart = tests::bass_window();
    const auto before = picture(*chart_scene(chart));
    chart.cells.push_back({0.0, 0.2, CellMotion::raucous, false, false});
    chart.cells.push_back({30.0, -1.0, CellMotion::raucous, false, false});
    chart.cells.push_back({std::numeric_limits<double>::quiet_NaN(), 0.2, CellMotion::raucous, false, false});
    EXPECT_EQ(picture(*chart_scene(chart)), before);
}

/// With a line of the player's far from the cells, which lets the plot's axes be asked.
StartChart four_beginnings() {
    return {.paces = {1.0, 2.0},
            .forces = {0.1, 0.2},
            .cells = std::vector<StartChartCell>(4),
            .player_force = ForceRange{0.08, 0.25}};
}

/// Each outcome of a beginning drawn alone, in black and white and without its tint: no two pictures are the same.
TEST_F(ChartsTest, BeginningsDifferByShapeAlone) {
    std::set<std::string> pictures;
    for (std::size_t step = 0; step < start_step_count; ++step) {
        StartChart chart = four_beginnings();
        chart.cells[0].step = static_cast<StartStep>(step);
        const auto scene = chart_scene(chart);
        const QImage image = picture(*scene);
        QChart* plot = plots(*scene).front();
        const QPoint place = plot->mapToPosition(QPointF(std::log10(1.0), std::log10(0.1))).toPoint();
        const int tint = qGray(image.pixel(place + QPoint(14, 14)));
        std::string shape;
        for (int y = -8; y <= 8; ++y)
            for (int x = -8; x <= 8; ++x) shape += qGray(image.pixel(place + QPoint(x, y))) < tint - 40 ? '#' : '.';
        EXPECT_GT(std::count(shape.begin(), shape.end(), '#'), 3) << step;
        pictures.insert(shape);
    }
    EXPECT_EQ(pictures.size(), start_step_count);
}

/// expects  a black square about a cell whose runs did not vote alike, and none about the others
TEST_F(ChartsTest, UnsureBeginningsAreMarked) {
    StartChart chart = four_beginnings();
    const QImage sure = picture(*chart_scene(chart));
    chart.cells[0].unsure = true;
    const auto scene = chart_scene(chart);
    const QImage image = picture(*scene);
    QChart* plot = plots(*scene).front();
    const auto at = [&](double pace) { return plot->mapToPosition(QPointF(std::log10(pace), std::log10(0.1))); };
    EXPECT_GT(dark_pixels(image, at(1.0), 14), dark_pixels(sure, at(1.0), 14) + 40);
    EXPECT_EQ(dark_pixels(image, at(2.0), 14), dark_pixels(sure, at(2.0), 14));
    EXPECT_TRUE(says(*scene, "unsure"));
}

TEST_F(ChartsTest, BeginningsThatDoNotFillTheirMapAreNotDrawn) {
    StartChart none = tests::start_sample(5, 5);
    none.cells.clear();
    StartChart few = tests::start_sample(5, 5);
    few.cells.pop_back();
    StartChart falling = tests::start_sample(5, 5);
    std::ranges::reverse(falling.paces);
    const QImage empty = picture(*chart_scene(none));
    EXPECT_EQ(picture(*chart_scene(few)), empty);
    EXPECT_EQ(picture(*chart_scene(falling)), empty);
    EXPECT_NE(picture(*chart_scene(tests::start_sample(5, 5))), empty);
}

}  // namespace
