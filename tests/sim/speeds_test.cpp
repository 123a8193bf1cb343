// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/speeds.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace {

using namespace sim;

constexpr double octave = 12.0;

SpeedStudy study_of(FrictionLaw law, const MapGrid& grid) {
    Preset preset = find_preset("division_bass_viol");
    preset.friction.law = law;
    const SpeedPlan plan{.stops = {octave}, .speeds = {0.1, 0.2, 0.4}, .grid = grid, .end = {}};
    return find_speeds(preset, preset.strings.front(), preset.player, plan, {.threads = 2, .progress = {}});
}

std::vector<SpeedRow> rows_of(const SpeedStudy& study, ForceRule rule) {
    std::vector<SpeedRow> rows;
    for (const SpeedRow& row : study.rows)
        if (row.rule == rule) rows.push_back(row);
    return rows;
}

/// The shares of all places, so that nothing can agree by having nothing.
double most_secure(const std::vector<SpeedRow>& rows) {
    double most = 0.0;
    for (const SpeedRow& row : rows) most = std::max(most, row.band.at_best.security);
    return most;
}

}  // namespace

/// source   derived: with Coulomb friction every equation of the string and bow is linear in force and speed together,
///          so that strokes of one force / speed differ by a factor only
/// expects  the same best place, security and edges at half and double speed, bit for bit, as a factor of 2 rounds
///          nothing; with the forces kept they do change
TEST(SpeedsTest, WithCoulombFrictionForceInProportionToSpeedChangesNothing) {
    const SpeedStudy study =
        study_of(FrictionLaw::coulomb, {.contact_points = 8, .player_forces = 3, .more_forces = 0});
    const std::vector<SpeedRow> rows = rows_of(study, ForceRule::forces_with_speed);
    ASSERT_EQ(rows.size(), 3U);
    ASSERT_GT(most_secure(rows), 0.0);
    for (const SpeedRow& row : rows) {
        EXPECT_EQ(row.band.best, rows.front().band.best) << row.player.speed;
        EXPECT_EQ(row.band.at_best, rows.front().band.at_best);
        EXPECT_EQ(row.band.band, rows.front().band.band);
        EXPECT_EQ(row.band.stretch, rows.front().band.stretch);
    }
    const std::vector<SpeedRow> same = rows_of(study, ForceRule::same_forces);
    EXPECT_NE(same.front().band.at_best, same.back().band.at_best);
}

/// expects  the dynamics to be the strokes of the proportional rule at their factors, and "mp" the preset's own
TEST(SpeedsTest, DynamicsScaleForceAndSpeedTogether) {
    const SpeedStudy study =
        study_of(FrictionLaw::thermal, {.contact_points = 3, .player_forces = 2, .more_forces = 0});
    const std::vector<SpeedRow> loudness = rows_of(study, ForceRule::dynamics);
    const std::vector<SpeedRow> scaled = rows_of(study, ForceRule::forces_with_speed);
    ASSERT_EQ(loudness.size(), dynamics.size());
    for (std::size_t i = 0; i < dynamics.size(); ++i) {
        EXPECT_EQ(loudness[i].dynamic, dynamics[i].name);
        EXPECT_DOUBLE_EQ(loudness[i].player.speed, dynamics[i].factor * study.player.speed);
        EXPECT_DOUBLE_EQ(loudness[i].player.force_high, dynamics[i].factor * study.player.force_high);
    }
    EXPECT_EQ(loudness[2].player, study.player);
    EXPECT_EQ(loudness[0].band.best, scaled[0].band.best);
    EXPECT_EQ(loudness[2].band.best, scaled[1].band.best);
}

/// expects  the rows that the words speak of: most secure; nearest 0.1 and 0.4 m/s; slowest and quickest in proportion
TEST(SpeedsTest, AnswersPointAtTheRowsTheyName) {
    SpeedStudy study{.player = {.speed = 0.2}, .rows = {}};
    for (const double stop : {0.0, 12.0})
        for (const ForceRule rule : {ForceRule::same_forces, ForceRule::forces_with_speed})
            for (const double speed : {0.05, 0.12, 0.3, 0.6}) {
                SpeedRow row{.note = {}, .rule = rule, .dynamic = {}, .player = {.speed = speed}, .band = {}};
                row.note.stop = stop;
                row.note.string = {.name = "1", .length = 0.5, .tension = 40.0, .mass_per_length = 1e-3};
                row.band.stretch = Band{.near = 0.02, .far = 0.04};
                row.band.at_best.security = rule == ForceRule::same_forces ? speed : 1.0 - speed - 0.01 * stop;
                study.rows.push_back(row);
            }
    const std::vector<SpeedAnswer> answers = speed_answers(study);
    ASSERT_EQ(answers.size(), 2U);
    EXPECT_EQ(answers[0].wants, 4U);
    EXPECT_EQ(answers[0].slow, 1U);
    EXPECT_EQ(answers[0].quick, 2U);
    EXPECT_EQ(answers[0].first, 4U);
    EXPECT_EQ(answers[0].last, 7U);
    EXPECT_EQ(answers[1].wants, 12U);
    EXPECT_EQ(answers[1].last, 15U);
    study.rows[4].band.at_best.security = 0.0;
    study.rows[7].band.at_best.security = 0.0;
    EXPECT_EQ(speed_answers(study)[0].first, 5U);
    EXPECT_EQ(speed_answers(study)[0].last, 6U);
}

TEST(SpeedsTest, UsualSpeedsHoldThePlayersOwnAndRise) {
    const std::vector<double> speeds = usual_speeds({.speed = 0.25});
    EXPECT_TRUE(std::ranges::is_sorted(speeds));
    EXPECT_NE(std::ranges::find(speeds, 0.25), speeds.end());
    EXPECT_EQ(speeds.front(), 0.0625);
}
