// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/security.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>

namespace {

using namespace sim;

const Player player{.force_low = 0.1,
                    .force_high = 0.4,
                    .speed = 0.2,
                    .rise = 0.06,
                    .wander = 0.0,
                    .pitch_tolerance = 20.0,
                    .speak_time = 0.09,
                    .speak_periods = 18.0,
                    .tone_level = 6.0,
                    .tone_brightness_ratio = 0.6,
                    .band_share = 0.8};

Note note_200_hz() {
    Note note{.string = {.name = "1", .length = 0.5, .tension = 40.0, .mass_per_length = 1e-3}};
    note.floor = 0.007;
    return note;
}

StrokeResult good(double level) {
    StrokeResult result;
    result.verdict.motion = Motion::helmholtz;
    result.speak_time = 0.02;
    result.tone = {.pitch = 200.0, .clarity = 30.0, .level = level, .centroid = 600.0};
    return result;
}

StrokeResult bad(Motion motion) {
    StrokeResult result;
    result.verdict.motion = motion;
    return result;
}

/// Places 10, 20, 40, 80, 160 mm, four forces; `stroke` tells what each gives.
StrokeMap map_of(const std::function<StrokeResult(double place_mm, std::size_t force)>& stroke) {
    StrokeMap map{.note = note_200_hz(),
                  .player = player,
                  .contact_points = {0.01, 0.02, 0.04, 0.08, 0.16},
                  .forces = even_in_ratio({0.1, 0.4}, 4),
                  .first_player_force = 0,
                  .player_force_count = 4,
                  .strokes = {}};
    for (double place : map.contact_points)
        for (std::size_t j = 0; j < 4; ++j) map.strokes.push_back(stroke(place * 1e3, j));
    return map;
}

StrokeMap wedge() {
    return map_of([](double place, std::size_t) {
        if (place < 15.0) return bad(Motion::multiple_slip);
        if (place > 100.0) return bad(Motion::raucous);
        return good(0.1 * std::pow(20.0 / place, 0.9));
    });
}

}  // namespace

TEST(SecurityTest, PlacesTooNearAndTooFarFailByForceAndWeakOnesByTone) {
    const StrokeMap map = wedge();
    const Assessment assessment(map, player);
    EXPECT_EQ(assessment.fault(0, 0), Fault::force_too_small);
    EXPECT_EQ(assessment.fault(1, 0), Fault::none);
    EXPECT_EQ(assessment.fault(3, 0), Fault::tone_weak);  // 11 dB down
    EXPECT_EQ(assessment.fault(4, 0), Fault::force_too_great);
    EXPECT_DOUBLE_EQ(assessment.at(0.02).security, 1.0);
    EXPECT_NEAR(assessment.at(std::sqrt(0.01 * 0.02)).security, 0.5, 1e-9);  // halfway in log distance
    EXPECT_DOUBLE_EQ(assessment.at(0.08).speaks_share, 1.0);
    EXPECT_DOUBLE_EQ(assessment.at(0.08).tone_share, 0.0);
}

TEST(SecurityTest, WanderUnderTheFloorFails) {
    const StrokeMap map = map_of([](double, std::size_t) { return good(0.1); });
    Player straying = player;
    straying.wander = 0.005;
    const Security at_floor = Assessment(map, straying).at(0.01);
    EXPECT_NEAR(at_floor.security, 0.5, 0.02);
    EXPECT_EQ(at_floor.fails_by, Fault::under_floor);
}

TEST(SecurityTest, BandEdgesLieWhereTheSecurityPassesTheShareAndAreNamed) {
    const StrokeMap map = wedge();
    const BandResult band = find_band(Assessment(map, player), map, player);
    ASSERT_TRUE(band.band.has_value());
    EXPECT_NEAR(band.band->near, 0.01 * std::pow(2.0, 0.8), 2e-4);
    EXPECT_NEAR(band.band->far, 0.04 * std::pow(2.0, 0.2), 5e-4);
    EXPECT_EQ(band.band->near_bound, Fault::force_too_small);
    EXPECT_EQ(band.band->far_bound, Fault::tone_weak);
    EXPECT_NEAR(*band.best, std::sqrt(0.02 * 0.04), 1e-3);
    EXPECT_TRUE(band.reason.empty());
}

TEST(SecurityTest, WithoutABandThereIsAReasonABestPlaceAndAStretch) {
    const StrokeMap map = map_of([](double place, std::size_t force) {
        return place > 15.0 && place < 100.0 && force < 2 ? good(0.1) : bad(Motion::raucous);
    });
    const BandResult band = find_band(Assessment(map, player), map, player);
    EXPECT_FALSE(band.band.has_value());
    ASSERT_TRUE(band.best.has_value());
    EXPECT_NEAR(band.at_best.security, 0.5, 1e-9);
    EXPECT_NE(band.reason.find("50 %"), std::string::npos) << band.reason;
    EXPECT_NE(band.reason.find("force too great"), std::string::npos) << band.reason;
    ASSERT_TRUE(band.stretch.has_value());
    EXPECT_LT(band.stretch->near, 0.02);
    EXPECT_GT(band.stretch->far, 0.08);
}

TEST(SecurityTest, NothingSpeaksGivesNoBestPlace) {
    const StrokeMap map = map_of([](double, std::size_t) { return bad(Motion::silent); });
    const BandResult band = find_band(Assessment(map, player), map, player);
    EXPECT_FALSE(band.best.has_value());
    EXPECT_FALSE(band.band.has_value());
    EXPECT_NE(band.reason.find("never slips"), std::string::npos) << band.reason;
}

TEST(SecurityTest, FlatAndDullStrokesAreNamedSo) {
    const StrokeMap map = map_of([](double place, std::size_t force) {
        StrokeResult result = good(0.1);
        if (force == 1) result.tone.pitch = 197.0;  // 26 cents flat
        if (place > 30.0 && force == 2) result.tone.centroid = 300.0;
        return result;
    });
    const Assessment assessment(map, player);
    EXPECT_EQ(assessment.fault(2, 1), Fault::flat);
    EXPECT_EQ(assessment.fault(3, 2), Fault::tone_dull);
}
