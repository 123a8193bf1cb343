// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/force_window.hpp"

#include <gtest/gtest.h>

namespace {

using namespace sim;

const ForceScan scan{.lowest = 0.01, .highest = 10.0, .steps = 31, .middle = 0.3};

/// Plays within the given ranges; under 0.1 N several slips, else raucous.
auto player_of(std::vector<std::pair<double, double>> ranges) {
    return [ranges = std::move(ranges)](double force) {
        for (const auto& [low, high] : ranges)
            if (force >= low && force <= high) return ForceAnswer{true, Motion::helmholtz};
        return ForceAnswer{false, force < 0.1 ? Motion::multiple_slip : Motion::raucous};
    };
}

}  // namespace

TEST(ForceWindowTest, EdgesAreFoundToTwoPerCentAndTheMotionsBeyondNamed) {
    const ForceWindow window = find_force_window(scan, player_of({{0.0731, 1.234}}));
    ASSERT_EQ(window.intervals.size(), 1U);
    EXPECT_NEAR(window.intervals[0].low, 0.0731, 0.02 * 0.0731);
    EXPECT_NEAR(window.intervals[0].high, 1.234, 0.02 * 1.234);
    EXPECT_EQ(window.intervals[0].below, Motion::multiple_slip);
    EXPECT_EQ(window.intervals[0].above, Motion::raucous);
    EXPECT_EQ(window.main, 0U);
}

TEST(ForceWindowTest, IslandsAreToldAndTheOneWithTheMiddleForceCounts) {
    const ForceWindow window = find_force_window(scan, player_of({{0.02, 0.1}, {0.2, 0.5}, {1.0, 8.0}}));
    ASSERT_EQ(window.intervals.size(), 3U);
    EXPECT_EQ(window.main, 1U);
}

TEST(ForceWindowTest, WithoutTheMiddleForceTheWidestInRatioCounts) {
    const ForceWindow window = find_force_window(scan, player_of({{0.02, 0.2}, {1.0, 3.0}}));
    EXPECT_EQ(window.main, 0U);
}

TEST(ForceWindowTest, EdgeAtTheEndOfTheScanHasNoMotionBeyond) {
    const ForceWindow window = find_force_window(scan, player_of({{0.0, 100.0}}));
    ASSERT_EQ(window.intervals.size(), 1U);
    EXPECT_FALSE(window.intervals[0].below.has_value());
    EXPECT_FALSE(window.intervals[0].above.has_value());
}

TEST(ForceWindowTest, NothingPlaysGivesNoInterval) {
    const ForceWindow window = find_force_window(scan, player_of({}));
    EXPECT_TRUE(window.intervals.empty());
    EXPECT_FALSE(window.main.has_value());
}
