// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/tone_spread.hpp"

#include "analysis/units.hpp"

#include <gtest/gtest.h>

namespace {

using namespace sim;

StrokeResult heard(std::optional<double> cents, double level, double clarity, double f0) {
    StrokeResult result;
    result.tone = {.clarity = clarity, .level = level};
    if (!cents) return result;
    result.tone.pitch = f0 * analysis::ratio_from_semitones(*cents / 100.0);
    result.tone.centroid = 3.0 * *result.tone.pitch;
    return result;
}

/// Two places, one force beside three of the player's; the outer force must not count.
StrokeMap small_map() {
    StrokeMap map{.note = {.string = {.name = "1", .length = 0.5, .tension = 40.0, .mass_per_length = 1e-3}},
                  .player = {},
                  .contact_points = {0.02, 0.08},
                  .forces = {0.05, 0.1, 0.2, 0.4},
                  .first_player_force = 1,
                  .player_force_count = 3,
                  .strokes = {}};
    const double f0 = fundamental(map.note.string);
    for (const double cents : {-99.0, -1.0, -2.0, -9.0}) map.strokes.push_back(heard(cents, 0.1, 30.0, f0));
    map.strokes.push_back(heard(99.0, 9.0, 50.0, f0));
    map.strokes.push_back(heard(-30.0, 0.2, 10.0, f0));
    map.strokes.push_back(heard(std::nullopt, 0.4, -12.0, f0));
    map.strokes.push_back(heard(-50.0, 0.0, 3.0, f0));
    return map;
}

}  // namespace

TEST(ToneSpreadTest, IsLeastMedianAndGreatestOverThePlayersForces) {
    const ToneSpread spread = tone_spread(small_map(), 0.03);
    EXPECT_EQ(spread.contact_point, 0.02);
    EXPECT_EQ(spread.strokes, 3);
    EXPECT_EQ(spread.pitched, 3);
    ASSERT_TRUE(spread.pitch && spread.brightness);
    EXPECT_NEAR(spread.pitch->low, -9.0, 1e-9);
    EXPECT_NEAR(spread.pitch->middle, -2.0, 1e-9);
    EXPECT_NEAR(spread.pitch->high, -1.0, 1e-9);
    EXPECT_NEAR(spread.brightness->middle, 3.0, 1e-12);
}

/// expects  the place nearest in ratio (42 mm lies nearer to 80 than to 20), a clarity of every stroke, pitch and level
///          of those that have one
TEST(ToneSpreadTest, CountsWhatHasNoPitchByItsClarity) {
    const ToneSpread spread = tone_spread(small_map(), 0.042);
    EXPECT_EQ(spread.contact_point, 0.08);
    EXPECT_EQ(spread.pitched, 2);
    EXPECT_EQ(spread.clarity, (Spread{-12.0, 3.0, 10.0}));
    ASSERT_TRUE(spread.pitch && spread.level);
    EXPECT_NEAR(spread.pitch->middle, -40.0, 1e-9);
    EXPECT_NEAR(spread.level->low, 0.2, 1e-12);
    EXPECT_NEAR(spread.level->high, 0.4, 1e-12);
}

TEST(ToneSpreadTest, OfStrokesWithoutPitchHasNoPitch) {
    StrokeMap map = small_map();
    for (StrokeResult& stroke : map.strokes) stroke.tone = {};
    const ToneSpread spread = tone_spread(map, 0.02);
    EXPECT_EQ(spread.pitched, 0);
    EXPECT_FALSE(spread.pitch || spread.brightness || spread.level);
    EXPECT_EQ(spread.clarity, (Spread{-60.0, -60.0, -60.0}));
}
