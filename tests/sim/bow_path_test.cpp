// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/bow_path.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace {

using namespace sim::passage;

/// Six places a millimetre apart, six stretches of two notes and a rest, worths at random.
PathProblem random_problem(unsigned seed) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> worth(-1.0, 1.0);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    PathProblem problem{.places = {}, .worths = {{}, {}}, .stretches = {}, .travel_cost = 100.0 * share(random)};
    for (int i = 0; i < 6; ++i) problem.places.push_back(0.010 + 0.001 * i);
    for (auto& worths : problem.worths)
        for (int i = 0; i < 6; ++i) worths.push_back(worth(random));
    for (const int note : {0, 0, -1, 1, 0, 1})
        problem.stretches.push_back(
            {.duration = 0.1 + share(random), .limit = 0.004 * share(random), .worth = note, .weight = share(random)});
    return problem;
}

bool allowed(const PathProblem& problem, const BowPath& path) {
    for (std::size_t k = 0; k < problem.stretches.size(); ++k) {
        const PathStretch& stretch = problem.stretches[k];
        const double way = std::abs(problem.places[path[k + 1]] - problem.places[path[k]]);
        if (way > stretch.limit * stretch.duration + 1e-9) return false;
    }
    return true;
}

/// Every path there is, counted through like the digits of a number.
double best_by_trying_all(const PathProblem& problem) {
    const std::size_t places = problem.places.size();
    BowPath path(problem.stretches.size() + 1, 0);
    double best = -1e9;
    while (true) {
        if (allowed(problem, path)) best = std::max(best, path_value(problem, path));
        std::size_t digit = 0;
        while (digit < path.size() && ++path[digit] == places) path[digit++] = 0;
        if (digit == path.size()) return best;
    }
}

}  // namespace

/// expects  the value of the best of all 6^7 paths, in 20 random problems; margin: rounding of sums in another order
TEST(BowPathTest, IsTheBestOfAllPaths) {
    for (unsigned seed = 1; seed <= 20; ++seed) {
        const PathProblem problem = random_problem(seed);
        const BowPath path = find_path(problem);
        EXPECT_TRUE(allowed(problem, path)) << seed;
        EXPECT_NEAR(path_value(problem, path), best_by_trying_all(problem), 1e-12) << seed;
    }
}

/// expects  worked out by hand: from worth 0 at 10 mm to 1 at 11 mm the mean is 1/2, the way costs 3 / m
TEST(BowPathTest, ValueIsTheMeanWorthLessTheWay) {
    const PathProblem problem{.places = {0.010, 0.011},
                              .worths = {{0.0, 1.0}},
                              .stretches = {{.duration = 1.0, .limit = 1.0, .worth = 0, .weight = 2.0}},
                              .travel_cost = 3.0};
    EXPECT_NEAR(path_value(problem, {0, 1}), 2.0 * 0.5 - 0.003, 1e-12);
    EXPECT_NEAR(path_value(problem, {1, 1}), 2.0, 1e-12);
    EXPECT_EQ(find_path(problem), (BowPath{1, 1}));
}

/// expects  a bow that may not move stays where it suits all notes together
TEST(BowPathTest, StaysWhereItMayNotMove) {
    PathProblem problem{.places = {0.01, 0.02, 0.03},
                        .worths = {{1.0, 0.7, 0.0}, {0.0, 0.7, 1.0}},
                        .stretches = {{.duration = 1.0, .limit = 0.0, .worth = 0, .weight = 1.0},
                                      {.duration = 1.0, .limit = 0.0, .worth = 1, .weight = 1.0}},
                        .travel_cost = 0.0};
    EXPECT_EQ(find_path(problem), (BowPath{1, 1, 1}));
    // in a rest between, it may go from the one's best to the other's
    problem.stretches.insert(problem.stretches.begin() + 1, {.duration = 1.0, .limit = 0.02});
    EXPECT_EQ(find_path(problem), (BowPath{0, 0, 2, 2}));
}

/// expects  a limit of just so many places lets the bow go just so many
TEST(BowPathTest, LimitIsCountedInWholePlaces) {
    const PathProblem problem{.places = {0.0, 0.0005, 0.001, 0.0015}, .worths = {}, .stretches = {}};
    EXPECT_EQ(places_within(problem, {.duration = 0.1, .limit = 0.01}), 2U);
    EXPECT_EQ(places_within(problem, {.duration = 0.1, .limit = 0.0099}), 1U);
    EXPECT_EQ(places_within(problem, {.duration = 1.0, .limit = 1.0}), 3U);
}
