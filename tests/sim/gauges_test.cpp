// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/gauges.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "sim/window.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace {

using namespace sim;
using analysis::metres_from_mm;
using analysis::mm_from_metres;

const Preset& bass() {
    static const Preset preset = find_preset("division_bass_viol");
    return preset;
}

GaugePlan small_plan(GaugeAim aim) {
    return {.stops = {7.0, 12.0},
            .grid = {.contact_points = 4, .player_forces = 3, .more_forces = 0},
            .end = {},
            .aim = aim,
            .aim_stop = {}};
}

GaugeStudy study_of(const GaugePlan& plan, int threads = 1) {
    const auto candidates =
        gauge_candidates(bass(), bass().strings[0], {.materials = {"gut"}, .diameters = {0.5e-3, 0.8e-3}});
    return find_gauges(bass(), bass(), candidates, plan, {.threads = threads});
}

}  // namespace

TEST(GaugeCandidatesTest, PresentStringComesFirstAndOnce) {
    const auto candidates = gauge_candidates(bass(), bass().strings[0], {.diameters = {0.60e-3, 0.64e-3, 0.70e-3}});
    ASSERT_EQ(candidates.size(), 3U);
    EXPECT_EQ(candidates[0], bass().strings[0]);
    EXPECT_NEAR(*candidates[1].gauge.diameter, 0.60e-3, 1e-12);
    EXPECT_NEAR(*candidates[2].gauge.diameter, 0.70e-3, 1e-12);
}

TEST(GaugeCandidatesTest, PullGivesTheDiameter) {
    for (const double pull : {45.0, 75.0}) {
        const auto candidates =
            gauge_candidates(bass(), bass().strings[0], {.materials = {"gut", "nylon", "steel"}, .tensions = {pull}});
        ASSERT_EQ(candidates.size(), 4U);
        for (std::size_t i = 1; i < candidates.size(); ++i)
            EXPECT_NEAR(open_string(bass(), candidates[i]).tension, pull, 1e-9) << i;
        EXPECT_GT(*candidates[2].gauge.diameter, *candidates[1].gauge.diameter);  // nylon is lighter, steel heavier
        EXPECT_LT(*candidates[3].gauge.diameter, *candidates[1].gauge.diameter);
    }
}

TEST(GaugeCandidatesTest, MassIsAnotherWayToAsk) {
    const auto candidates = gauge_candidates(bass(), bass().strings[0], {.masses = {0.5e-3}});
    ASSERT_EQ(candidates.size(), 2U);
    EXPECT_NEAR(open_string(bass(), candidates[1]).mass_per_length, 0.5e-3, 1e-12);
}

TEST(GaugeCandidatesTest, WithoutSizesOwnMaterialIsVariedAndOthersKeepThePull) {
    const auto own = gauge_candidates(bass(), bass().strings[0], {});
    ASSERT_EQ(own.size(), 7U);
    EXPECT_NEAR(*own[1].gauge.diameter / *own[0].gauge.diameter, 0.85, 1e-9);
    const auto both = gauge_candidates(bass(), bass().strings[0], {.materials = {"nylon"}});
    ASSERT_EQ(both.size(), 2U);
    EXPECT_NEAR(open_string(bass(), both[1]).tension, open_string(bass(), both[0]).tension, 1e-9);
}

/// expects  an overspun string of twice the mass: pull and impedance doubled, bending as of a core 1.41 times as thick,
///          twist scaled with the impedance at the same ratio of speeds
TEST(GaugeCandidatesTest, OverspunStringIsScaledFromThePresent) {
    const PresetString& present = bass().strings[5];
    const String before = open_string(bass(), present);
    const PresetString heavy = with_gauge(bass(), present, "overspun gut", 2.0 * before.mass_per_length);
    const String after = open_string(bass(), heavy);
    EXPECT_NEAR(after.tension, 2.0 * before.tension, 1e-9);
    EXPECT_NEAR(after.bending_stiffness, 4.0 * before.bending_stiffness, 1e-12);
    EXPECT_NEAR(after.torsion_impedance / wave_impedance(after), before.torsion_impedance / wave_impedance(before),
                1e-9);
    EXPECT_NEAR(after.torsion_speed / wave_speed(after), before.torsion_speed / wave_speed(before), 1e-9);
}

TEST(GaugeCandidatesTest, RefuseWhatCantBeMadeOrScaled) {
    const PresetString& top = bass().strings[0];
    EXPECT_THROW(with_gauge(bass(), top, "brass", 1e-3), analysis::InputError);
    EXPECT_THROW(with_gauge(bass(), top, "overspun steel", 1e-3), analysis::InputError);
    EXPECT_THROW(with_gauge(bass(), top, "gut", 1.0), analysis::InputError);
    EXPECT_THROW(with_gauge(bass(), top, "gut", 0.0), analysis::InputError);
}

TEST(GaugesTest, CandidatesAreRankedByTheAim) {
    const GaugeStudy by_pull = study_of(small_plan(GaugeAim::nearest_pull));
    ASSERT_EQ(by_pull.rows.size(), 3U);
    EXPECT_TRUE(by_pull.rows[0].present);
    EXPECT_NEAR(*by_pull.rows[1].string.gauge.diameter, 0.5e-3, 1e-9);  // 24 N off, the other 34 N
    EXPECT_EQ(by_pull.aim_stop, 12.0);
    const GaugeStudy by_force = study_of(small_plan(GaugeAim::least_force));
    double before = 0.0;
    for (const GaugeRow& row : by_force.rows) {
        const ClimbStop& stop = aim_stop_of(by_force, row);
        EXPECT_EQ(stop.note.stop, 12.0);
        if (!stop.speaking || !stop.speaking->main) continue;
        const double least = stop.speaking->intervals[*stop.speaking->main].low;
        EXPECT_GE(least, before);
        before = least;
    }
    EXPECT_GT(before, 0.0);
}

/// expects  every row what the climb of the same string says, whatever the number of threads
TEST(GaugesTest, BandsAreThoseOfTheClimb) {
    const GaugePlan plan = small_plan(GaugeAim::widest_band);
    const GaugeStudy study = study_of(plan, 2);
    for (const GaugeRow& row : study.rows) {
        const Climb climb = find_climb(bass(), row.string, bass().player,
                                       {.stops = plan.stops, .grid = plan.grid, .end = {}}, {.threads = 1});
        for (std::size_t i = 0; i < plan.stops.size(); ++i) {
            EXPECT_EQ(row.stops[i].band.best, climb.stops[i].band.best);
            EXPECT_EQ(row.stops[i].band.band, climb.stops[i].band.band);
        }
    }
}

TEST(GaugesTest, HeavierCandidateDrawsThePullOfTheWholeSet) {
    const GaugeStudy study = study_of(small_plan(GaugeAim::nearest_pull));
    const double before = total_pull(bass());
    EXPECT_NEAR(study.set_up_pull, before, 1e-9);
    for (const GaugeRow& row : study.rows) {
        const double own = open_string(bass(), bass().strings[0]).tension;
        EXPECT_NEAR(row.set_pull, before - own + row.open.tension, 1e-9);
        const bool heavy = *row.string.gauge.diameter > 0.7e-3;
        EXPECT_EQ(std::ranges::count(row.cautions, "pull_above_set_up", &Caution::key), heavy ? 1 : 0);
        EXPECT_NEAR(row.to_likely_break.value(), 12.0 * std::log2(240.0 / (276.98 * 0.69)), 1e-3);
    }
    ASSERT_FALSE(study.cautions.empty());
    EXPECT_EQ(study.cautions[0].key, "pull_above_set_up");
    EXPECT_THAT(study.cautions[0].text, testing::StartsWith("With gut 0.80 mm, all strings "));
}

TEST(GaugesTest, SetRaisedATonePullsAQuarterMoreOnEveryString) {
    Preset raised = bass();
    raised.reference_pitch *= analysis::ratio_from_semitones(2.0);
    GaugePlan plan = small_plan(GaugeAim::widest_band);
    plan.stops = {12.0};
    plan.grid = {.contact_points = 3, .player_forces = 2, .more_forces = 0};
    const GaugeStudy study = find_set(bass(), raised, plan, {.threads = 2});
    ASSERT_EQ(study.rows.size(), bass().strings.size());
    for (std::size_t i = 0; i < study.rows.size(); ++i) {
        EXPECT_TRUE(study.rows[i].present);
        EXPECT_NEAR(study.rows[i].open.tension / open_string(bass(), bass().strings[i]).tension, std::exp2(1.0 / 3.0),
                    1e-9);
    }
    EXPECT_NEAR(study.pull / study.set_up_pull, std::exp2(1.0 / 3.0), 1e-9);
    EXPECT_EQ(study.cautions, stringing_cautions(bass(), raised));
    EXPECT_EQ(study.cautions.front().key, "pull_above_set_up");
}
