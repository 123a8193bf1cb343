// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/level.hpp"
#include "analysis/units.hpp"
#include "tests/sim/live.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <span>

namespace {

using namespace sim;
using tests::last;
using tests::Live;

double greatest_jump(std::span<const float> sound) {
    double jump = 0.0;
    for (std::size_t i = 1; i < sound.size(); ++i)
        jump = std::max(jump, std::abs(static_cast<double>(sound[i]) - sound[i - 1]));
    return jump;
}

}  // namespace

/// expects  a slur carries the motion on: the new note's pitch and Helmholtz motion 0.4 s later, and no step in the
///          sound greater than twice those of the notes themselves
TEST(LiveChangeTest, StopThatMovesOnTheSameStringSlurs) {
    const Preset preset = find_preset("division_bass_viol");
    Live live;
    live.set_note(preset, 0, 5.0);
    live.voice.set_stroke({.contact = 0.045, .force = 0.2, .speed = preset.player.speed});
    const std::vector<float> before = live.play(0.8);
    const Note note = live.set_note(preset, 0, 7.0);
    const std::vector<float> after = live.play(0.4);
    ASSERT_TRUE(live.heard && live.heard->tone.pitch);
    EXPECT_NEAR(analysis::cents_between(*live.heard->tone.pitch, fundamental(note.string)), 0.0, 20.0);
    EXPECT_EQ(live.heard->verdict.motion, Motion::helmholtz);
    std::vector<float> change(before.end() - 10, before.end());
    change.insert(change.end(), after.begin(), after.begin() + 2400);
    EXPECT_LE(greatest_jump(change), 2.0 * greatest_jump(std::span(before).last(9600)));
}

/// expects  a stop that glides an octave up in a second, the bow following, designed anew 30 times: in tune and in
///          Helmholtz motion 0.4 s after, and never so loud that the limiter would have to hold it
TEST(LiveChangeTest, GlideUpTheStringGoesOn) {
    const Preset preset = find_preset("violin");
    Live live;
    Note note = live.set_note(preset, 0, 0.0);
    const auto follow = [&] {
        live.voice.set_stroke(
            {.contact = 0.1 * note.string.length, .force = middle_force(preset.player), .speed = preset.player.speed});
    };
    follow();
    live.play(0.5);
    float greatest = 0.0F;
    for (int i = 1; i <= 30; ++i) {
        note = live.set_note(preset, 0, 0.4 * i);
        follow();
        greatest = std::max(greatest, std::ranges::max(live.play(1.0 / 30.0)));
    }
    live.play(0.4);
    ASSERT_TRUE(live.heard && live.heard->tone.pitch);
    EXPECT_NEAR(analysis::cents_between(*live.heard->tone.pitch, fundamental(note.string)), 0.0, 20.0);
    EXPECT_EQ(live.heard->verdict.motion, Motion::helmholtz);
    EXPECT_LT(greatest, 0.5F);
}

/// expects  the old note fades to nothing within 8 ms and a block, the new one begins at rest
TEST(LiveChangeTest, NoteOnAnotherStringBeginsAtRest) {
    const Preset preset = find_preset("division_bass_viol");
    Live live;
    live.set_note(preset, 0, 0.0);
    live.voice.set_stroke({.contact = 0.06, .force = 0.2, .speed = preset.player.speed});
    const std::vector<float> before = live.play(0.5);
    live.set_note(preset, 1, 0.0);
    const std::vector<float> after = live.play(0.5);
    const auto quiet = std::span(after).subspan(384, 48);  // 8 … 9 ms
    EXPECT_LT(greatest_jump(std::span(after).first(480)), 2.0 * greatest_jump(std::span(before).last(9600)));
    EXPECT_LT(std::abs(*std::ranges::max_element(quiet, {}, [](float x) { return std::abs(x); })), 1e-3F);
    EXPECT_GT(analysis::rms(last(after, 0.1)), 1e-3);
}
