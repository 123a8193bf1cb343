// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/clip.hpp"
#include "gui/charts/scale.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace {

using namespace gui::charts;
using testing::ElementsAre;
using testing::IsEmpty;

std::vector<std::string> labels(const Scale& scale, const TickRoom& room) {
    std::vector<std::string> result;
    for (const Tick& tick : ticks(scale, room)) result.push_back(tick.label);
    return result;
}

TEST(ScaleTest, LogarithmicTicksAreRoundAndMoreThanPowersOfTen) {
    EXPECT_THAT(labels({.low = 8, .high = 250, .logarithmic = true}, {.pixels = 300, .least_apart = 46}),
                ElementsAre("10", "20", "50", "100", "200"));
    EXPECT_THAT(labels({.low = 0.09, .high = 0.5, .logarithmic = true}, {.pixels = 400, .least_apart = 30}),
                ElementsAre("0.1", "0.15", "0.2", "0.3", "0.4", "0.5"));
}

TEST(ScaleTest, NarrowLogarithmicAxisStillHasTicks) {
    EXPECT_GE(ticks({.low = 41, .high = 49, .logarithmic = true}, {.pixels = 700, .least_apart = 46}).size(), 3U);
}

TEST(ScaleTest, TicksKeepTheirDistance) {
    for (const double high : {1.1, 2.0, 7.0, 40.0, 3000.0, 1e7}) {
        for (const bool logarithmic : {false, true}) {
            const Scale scale{.low = 1.0, .high = high, .logarithmic = logarithmic};
            const auto found = ticks(scale, {.pixels = 500, .least_apart = 40});
            EXPECT_GE(found.size(), 2U) << high;
            for (std::size_t i = 1; i < found.size(); ++i)
                EXPECT_GE((scale.share(found[i].value) - scale.share(found[i - 1].value)) * 500, 40.0) << high;
        }
    }
}

TEST(ScaleTest, SemitonesAreWhole) {
    EXPECT_THAT(labels({.low = -0.6, .high = 3.6}, {.pixels = 800, .least_apart = 46, .least_step = 1}),
                ElementsAre("0", "1", "2", "3"));
}

TEST(ScaleTest, ExtentPassesOverWhatItCannotShow) {
    Extent extent(true);
    for (const double value :
         {10.0, 100.0, 0.0, -5.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()})
        extent.add(value);
    const Scale scale = extent.scale(0.0);
    EXPECT_DOUBLE_EQ(scale.low, 10.0);
    EXPECT_DOUBLE_EQ(scale.high, 100.0);
}

TEST(ScaleTest, ScaleOfOneValueHasLength) {
    for (const bool logarithmic : {false, true}) {
        Extent extent(logarithmic);
        extent.add(20.0);
        const Scale scale = extent.scale(0.05);
        EXPECT_LT(scale.low, 20.0);
        EXPECT_GT(scale.high, 20.0);
    }
    const Scale nothing = Extent(true).scale(0.05);
    EXPECT_LT(nothing.low, nothing.high);
}

TEST(ScaleTest, NumbersForPeople) {
    EXPECT_EQ(number_text(0.05), "0.05");
    EXPECT_EQ(number_text(42.13), "42.1");
    EXPECT_EQ(number_text(123456.0), "123456");
    EXPECT_EQ(number_text(0.3000000000000004, 6), "0.3");
    EXPECT_EQ(number_text(0.0), "0");
    EXPECT_EQ(number_text(-6.0), "-6");
}

/// The box is 0 … 1 both ways; every place below can be checked by eye.
TEST(ClipTest, LineThroughTheBoxIsCutAtBothSides) {
    EXPECT_THAT(clipped({{-1.0, 0.5}, {2.0, 0.5}}, {}), ElementsAre(Polyline{{0.0, 0.5}, {1.0, 0.5}}));
    EXPECT_THAT(clipped({{-0.5, 0.0}, {0.5, 1.0}}, {}), ElementsAre(Polyline{{0.0, 0.5}, {0.5, 1.0}}));
}

TEST(ClipTest, LineThatLeavesAndComesBackFallsInTwo) {
    EXPECT_THAT(clipped({{0.25, 0.5}, {0.25, 1.5}, {0.75, 1.5}, {0.75, 0.5}}, {}),
                ElementsAre(Polyline{{0.25, 0.5}, {0.25, 1.0}}, Polyline{{0.75, 1.0}, {0.75, 0.5}}));
}

TEST(ClipTest, WhatLiesInsideStaysInOnePiece) {
    const Polyline line{{0.0, 0.0}, {0.5, 1.0}, {1.0, 0.25}};
    EXPECT_THAT(clipped(line, {}), ElementsAre(line));
}

TEST(ClipTest, WhatLiesOutsideIsGone) {
    EXPECT_THAT(clipped({{-1.0, 0.5}, {0.5, 2.5}}, {}), IsEmpty());
    EXPECT_THAT(clipped({{-1.0, -1.0}, {2.0, -1.0}}, {}), IsEmpty());
    EXPECT_THAT(clipped({}, {}), IsEmpty());
}

}  // namespace
