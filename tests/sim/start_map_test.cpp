// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/start_map.hpp"

#include "sim/start_wedge.hpp"
#include "tests/published/cello_d.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace sim;
using namespace tests;

StartRun clean_run(bool strict) {
    return {.strict = strict ? StartOutcome::clean : StartOutcome::late, .lenient = StartOutcome::clean};
}

/// A map of 17 forces (0.1 to 10 N) and 9 accelerations (0.5 to 8 m/s^2), nothing played: clean where `is_clean` says.
template <class IsClean>
StartMap invented_map(const IsClean& is_clean) {
    StartMap map{.note = note_of(cello_d({}), rigid_bridge(), fitted_law()), .plan = {}, .cells = {}};
    map.plan.start.speed = 0.2;
    map.plan.start.lenient = {0.090, 18.0};
    map.forces = even_in_ratio({0.1, 10.0}, 17);
    map.paces = even_in_ratio({0.5, 8.0}, 9);
    for (const double pace : map.paces) {
        for (const double force : map.forces) {
            StartCell cell{.point = {force, pace}, .run = {}};
            if (is_clean(force, pace)) {
                cell.run = clean_run(true);
                cell.strict_votes = cell.lenient_votes = 1;
            }
            map.cells.push_back(cell);
        }
    }
    return map;
}

Friction coulomb(double sticking, double sliding) {
    return {.law = FrictionLaw::coulomb, .static_coefficient = sticking, .sliding_coefficient = sliding};
}

StartPlan small_plan(const Note& note) {
    StartPlan plan;
    plan.start = {.contact_point = cello_d_ratio * note.string.length, .speed = 0.2, .lenient = {0.090, 18.0}};
    plan.forces = {0.15, 1.2};
    plan.force_count = 6;
    plan.paces = {0.2, 1.5};
    plan.pace_count = 4;
    return plan;
}

}  // namespace

TEST(AcceptanceTest, TheLongerOfTimeAndPeriodsCounts) {
    EXPECT_DOUBLE_EQ(accepted_time({0.050, 10.0}, 1.0 / 440.0), 0.050);
    EXPECT_DOUBLE_EQ(accepted_time({0.050, 10.0}, 1.0 / 50.0), 0.2);
}

/// expects  edges that rise with the acceleration itself: power 1, from 0.3 a to 1.2 a
/// margin   edges lie within half a step (of 1.33) of the truth: 0.15 of the power over a range of 16
TEST(WedgeTest, SlopesOfItsEdgesAreFound) {
    const StartMap map = invented_map([](double force, double a) { return force > 0.3 * a && force < 1.2 * a; });
    const Wedge wedge = find_wedge(map, StartLimit::strict, 1.0);
    ASSERT_TRUE(wedge.low_edge && wedge.high_edge);
    EXPECT_NEAR(wedge.low_edge->power, 1.0, 0.15);
    EXPECT_NEAR(wedge.high_edge->power, 1.0, 0.15);
    const double half_step = std::sqrt(map.forces[1] / map.forces[0]);
    for (const WedgeColumn& column : wedge.columns) {
        ASSERT_NE(column.forces.chosen(), nullptr);
        if (column.forces.chosen()->low_open || column.forces.chosen()->high_open) continue;
        EXPECT_LE(std::abs(std::log(column.forces.chosen()->low / (0.3 * column.pace))), 1.001 * std::log(half_step));
        EXPECT_LE(std::abs(std::log(column.forces.chosen()->high / (1.2 * column.pace))), 1.001 * std::log(half_step));
    }
}

/// expects  at 1 N accelerations from 1/1.2 to 1/0.3 m/s^2, the best in their middle in ratio (1.667)
/// margin   a step of the map (1.41) from end to end
TEST(WedgeTest, BestPaceIsTheMiddleOfWhatWorksAtTheMiddleForce) {
    const StartMap map = invented_map([](double force, double a) { return force > 0.3 * a && force < 1.2 * a; });
    const Wedge wedge = find_wedge(map, StartLimit::lenient, 1.02);
    EXPECT_DOUBLE_EQ(wedge.middle_force, 1.0);  // the map's nearest
    ASSERT_TRUE(wedge.best_pace);
    EXPECT_NEAR(std::log(*wedge.best_pace / std::sqrt(1.0 / 0.36)), 0.0, 0.5 * std::log(2.0));
    EXPECT_NE(wedge_in_words(map, wedge).find("gather speed by"), std::string::npos);
}

TEST(WedgeTest, TheIntervalWithTheMostCellsCountsAndTheOthersAreTold) {
    const StartMap map = invented_map(
        [](double force, double) { return (force > 0.15 && force < 0.3) || (force > 0.9 && force < 4.0); });
    const StartIntervals forces = find_wedge(map, StartLimit::strict, 1.0).columns.front().forces;
    ASSERT_EQ(forces.all.size(), 2U);
    EXPECT_EQ(forces.main, 1U);
    EXPECT_GT(forces.chosen()->cells, forces.all[0].cells);
}

TEST(WedgeTest, AnEdgeAtTheMapsEndIsOpenAndGivesNoSlope) {
    const Wedge wedge =
        find_wedge(invented_map([](double force, double) { return force < 1.0; }), StartLimit::strict, 1.0);
    EXPECT_TRUE(wedge.columns.front().forces.chosen()->low_open);
    EXPECT_FALSE(wedge.columns.front().forces.chosen()->high_open);
    EXPECT_FALSE(wedge.low_edge);
    EXPECT_TRUE(wedge.high_edge);
}

TEST(WedgeTest, NothingCleanIsSaidInWords) {
    const StartMap map = invented_map([](double, double) { return false; });
    const Wedge wedge = find_wedge(map, StartLimit::strict, 1.0);
    EXPECT_FALSE(wedge.best_pace);
    EXPECT_EQ(wedge.clean_cells, 0);
    EXPECT_EQ(wedge_in_words(map, wedge).rfind("No beginning of this map", 0), 0U);
}

TEST(StartCellTest, MostVotesDecideAndDivisionIsShown) {
    const StartCell cell{.point = {}, .run = clean_run(false), .runs = 5, .strict_votes = 2, .lenient_votes = 5};
    EXPECT_DOUBLE_EQ(cell.share(StartLimit::strict), 0.4);
    EXPECT_FALSE(cell.clean(StartLimit::strict));
    EXPECT_TRUE(cell.unsure(StartLimit::strict));
    EXPECT_TRUE(cell.clean(StartLimit::lenient));
    EXPECT_FALSE(cell.unsure(StartLimit::lenient));
}

/// source   dimensional scaling with Coulomb friction (derived): velocities and forces scale, times don't
/// expects  force, acceleration and full speed times two: the same run, times bit for bit
TEST(StartRunTest, ForceAndAccelerationScaleTogether) {
    const Note note = note_of(cello_d({}), resistive_bridge(100.0), coulomb(0.8, 0.3));
    const StartCase once = small_plan(note).start;
    StartCase twice = once;
    twice.speed *= 2.0;
    for (const StartPoint& point : {StartPoint{0.3, 0.4}, StartPoint{0.1, 1.0}, StartPoint{1.0, 0.5}}) {
        const StartRun run = play_start(note, once, point);
        EXPECT_TRUE(run.first_slip.has_value());
        EXPECT_EQ(run, play_start(note, twice, {2.0 * point.force, 2.0 * point.pace})) << point.force;
    }
}

/// source   waves returning to a stuck bow (derived; see StuckString in tests/published)
/// expects  first main slip at 34.86 ms for 1 m/s^2 and 1 N, sticking coefficient 1.2, no losses: the hair lets go at
/// once margin   a step or two of 10 us
TEST(StartRunTest, FirstMainSlipIsTheFirstRelease) {
    const Note note =
        note_of(cello_d({.losses = false, .torsion = false, .stiffness = false}), rigid_bridge(), coulomb(1.2, 0.3));
    const StartRun run = play_start(note, small_plan(note).start, {1.0, 1.0});
    ASSERT_TRUE(run.first_slip);
    EXPECT_NEAR(*run.first_slip, 0.03486, 5e-5);
}

/// expects  the same cells whoever plays them; votes of five where neighbours differ, of one elsewhere; strict within
///          lenient everywhere
TEST(StartMapTest, IsTheSameOnAnyThreadsAndStrictLiesWithinLenient) {
    const Note note = note_of(cello_d({}), resistive_bridge(100.0), {});
    const StartPlan plan = small_plan(note);
    const StartMap map = start_map(note, plan, {.threads = 1});
    EXPECT_EQ(map.cells, start_map(note, plan, {.threads = 2}).cells);
    int voted = 0;
    for (const StartCell& cell : map.cells) {
        EXPECT_TRUE(cell.runs == 1 || cell.runs == 5) << cell.runs;
        EXPECT_LE(cell.strict_votes, cell.lenient_votes);
        EXPECT_LE(cell.lenient_votes, cell.runs);
        EXPECT_TRUE(cell.run.strict != StartOutcome::clean || cell.run.lenient == StartOutcome::clean);
        voted += cell.runs == 5 ? 1 : 0;
    }
    EXPECT_GT(voted, 0);
    EXPECT_LT(voted, static_cast<int>(map.cells.size()));
}

/// expects  longer limits to take in every beginning that shorter ones do
TEST(StartMapTest, ALongerLimitLosesNoCleanBeginning) {
    const Note note = note_of(cello_d({}), resistive_bridge(100.0), {});
    StartCase start = small_plan(note).start;
    int clean = 0;
    for (const double acceleration : {0.2, 0.4, 0.8}) {
        start.strict = {0.0, 3.0};
        const StartRun tight = play_start(note, start, {0.25, acceleration});
        start.strict = {0.090, 18.0};
        const StartRun wide = play_start(note, start, {0.25, acceleration});
        EXPECT_EQ(tight.transient, wide.transient);
        EXPECT_TRUE(tight.strict != StartOutcome::clean || wide.strict == StartOutcome::clean);
        EXPECT_EQ(wide.strict, wide.lenient);
        clean += wide.strict == StartOutcome::clean ? 1 : 0;
    }
    EXPECT_GT(clean, 0);
}

/// expects  a note that settles to be clean or late, one that doesn't to have a fault
TEST(StartMapTest, OnlyANoteThatSettlesIsCleanOrLate) {
    const Note note = note_of(cello_d({}), resistive_bridge(100.0), {});
    int settled = 0;
    for (const double force : {0.05, 0.25, 0.4, 2.0}) {
        const StartRun run = play_start(note, small_plan(note).start, {force, 0.4});
        const bool good = run.strict == StartOutcome::clean || run.strict == StartOutcome::late;
        EXPECT_EQ(good, run.transient.has_value()) << force;
        EXPECT_EQ(good, run.motion == Motion::helmholtz) << force;
        settled += good ? 1 : 0;
    }
    EXPECT_GT(settled, 0);
    EXPECT_LT(settled, 4);
}

/// expects  a crossing to begin with the hair sliding, and to run until its force has risen and time is up
TEST(StartRunTest, ACrossingHasItsForceRise) {
    const Note note = note_of(cello_d({}), resistive_bridge(100.0), {});
    StartCase start = small_plan(note).start;
    start.kind = StartKind::crossing;
    const StartPoint point{0.3, 0.05};
    EXPECT_NEAR(start_duration(note, start, point), 0.05 + 18.0 / cello_d_hz * 2.0 + 0.05, 1e-3);
    const StartRun run = play_start(note, start, point);
    EXPECT_TRUE(run.first_slip.has_value());
    EXPECT_NE(run.strict, StartOutcome::stuck);
}
