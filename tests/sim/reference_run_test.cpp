// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/reference_run.hpp"

#include "sim/sound/live_note.hpp"

#include <gtest/gtest.h>

namespace {

using namespace sim;
using sound::LiveNote;

constexpr double card_rate = 48000.0;

}  // namespace

/// expects  the same bits as the run it took up, on the same note
TEST(ReferenceRunTest, RunTakenUpGoesOnAsIfNothingHadHappened) {
    const Preset preset = find_preset("division_bass_viol");
    LiveNote first(preset, 0, 12.0, card_rate);
    LiveNote second(preset, 0, 12.0, card_rate);
    const kernel::BowContact::Hand hand{.speed = 0.2, .force = 0.25, .lengthwise = 0.0};
    const auto play_on = [&](LiveNote& note) {
        const double force = note.run.advance(hand);
        note.run.step();
        return force;
    };
    first.run.place_bow(0.035);
    second.run.place_bow(0.035);
    for (int i = 0; i < 20000; ++i) play_on(first);
    ASSERT_TRUE(kernel::same_string(first.kernel, second.kernel));
    second.run.take_up(first.run);
    for (int i = 0; i < 5000; ++i) ASSERT_EQ(play_on(second), play_on(first)) << i;
}

TEST(ReferenceRunTest, OtherStringsAndInstrumentsAreNotTheSameString) {
    const Preset bass = find_preset("division_bass_viol");
    const LiveNote note(bass, 0, 12.0, card_rate);
    EXPECT_TRUE(kernel::same_string(note.kernel, LiveNote(bass, 0, 3.5, card_rate).kernel));
    EXPECT_FALSE(kernel::same_string(note.kernel, LiveNote(bass, 1, 12.0, card_rate).kernel));
    EXPECT_FALSE(kernel::same_string(note.kernel, LiveNote(find_preset("violin"), 0, 12.0, card_rate).kernel));
}
