// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/ends.hpp"

#include <gtest/gtest.h>

namespace {

using namespace sim;

/// A light, quick setting: a law of slip speed, one place.
Ends ends_at(double stop) {
    Preset preset = find_preset("division_bass_viol");
    preset.friction.law = FrictionLaw::hyperbola;
    const auto ends = find_ends(preset, preset.strings[0], stop,
                                {.finger_qs = {50.0, 200.0}, .contact_point = 0.03, .held_points = 1},
                                {.threads = 2, .progress = {}});
    return ends.value_or(Ends{});
}

}  // namespace

/// expects  nut for the open string, frets up to the seventh, then the finger; what is asked for goes first
TEST(EndsTest, FingerIsTheUsualEndFromTheLastFretUp) {
    const Preset viol = find_preset("division_bass_viol");
    EXPECT_EQ(usual_end(viol, 0.0), StopEnd::nut);
    EXPECT_EQ(usual_end(viol, 1.0), StopEnd::fret);
    EXPECT_EQ(usual_end(viol, 7.0), StopEnd::fret);
    EXPECT_EQ(usual_end(viol, 8.0), StopEnd::finger);
    EXPECT_EQ(usual_end(viol, last_stop(viol)), StopEnd::finger);
    EXPECT_EQ(usual_end(find_preset("violin"), 1.0), StopEnd::finger);
    EXPECT_EQ(make_note(viol, viol.strings[0], 12.0).end, StopEnd::finger);
    EXPECT_FALSE(make_note(viol, viol.strings[0], 12.0).transverse.end_losses.empty());
    EXPECT_EQ(make_note(viol, viol.strings[0], 12.0, StopEnd::fret).end, StopEnd::fret);
    EXPECT_TRUE(make_note(viol, viol.strings[0], 12.0, StopEnd::fret).transverse.end_losses.empty());
}

TEST(EndsTest, NutIsComparedOnTheOpenStringOnly) {
    const auto open = compared_ends(0.0, {100.0});
    ASSERT_EQ(open.size(), 3U);
    EXPECT_EQ(open[0].end, StopEnd::nut);
    const auto stopped = compared_ends(12.0, {50.0, 100.0});
    ASSERT_EQ(stopped.size(), 3U);
    EXPECT_EQ(stopped[0], (StringEnd{StopEnd::fret, 0.0}));
    EXPECT_EQ(stopped[2], (StringEnd{StopEnd::finger, 100.0}));
}

/// source   a loss at the end must be made good by the bow, and rounds the corner ([Schelleng1973]: the least force
/// grows
///          with what the ends take; signs only)
/// expects  at one place the softer finger needs more force to hold, and rings shorter
TEST(EndsTest, SofterEndNeedsMoreForceAndRingsShorter) {
    const Ends ends = ends_at(12.0);
    ASSERT_EQ(ends.answers.size(), 3U);  // fret, Q 50, Q 200
    const auto least = [&](std::size_t i) {
        const ForceWindow& held = ends.answers[i].places.front().held;
        return held.main ? held.intervals[*held.main].low : 1e9;
    };
    EXPECT_LT(least(0), least(2));
    EXPECT_LT(least(2), least(1));
    EXPECT_GT(*ends.answers[0].ring_time, *ends.answers[2].ring_time);
    EXPECT_GT(*ends.answers[2].ring_time, *ends.answers[1].ring_time);
}
