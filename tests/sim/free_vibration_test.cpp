// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/sim/free_vibration.hpp"

#include <gtest/gtest.h>

namespace {

using namespace sim;
using namespace tests;

/// A string that stands for all, for the quick run.
Note sample_note(double stop, StopEnd end) {
    const Preset preset = find_preset("division_bass_viol");
    return make_note(preset, preset.strings[1], stop, end);
}

std::vector<RingingPartial> seen(const Note& note, const std::vector<RingingPartial>& expected) {
    return measured_by_windows(rung(note, window_duration(note)), expected);
}

std::vector<RingingPartial> inverted(const Note& note, const std::vector<RingingPartial>& expected) {
    return measured_by_harmonic_inversion(rung(note, inversion_duration(note)), expected);
}

}  // namespace

/// source   f_n = n f0 sqrt(1 + B n^2) and Q_n of [Woodhouse2004] (form from memory)
/// expects  partials to 20 with B n^2 <= 0.1 and n f0 <= 8 kHz of a knocked string, open and stopped hard
/// margin   3 cents, 10 % of the decay
TEST(FreeVibrationTest, KnockedStringRingsByTheFormulas) {
    for (double stop : {0.0, 12.0}) {
        const Note note = sample_note(stop, stop > 0.0 ? StopEnd::fret : StopEnd::nut);
        const auto expected = partials_by_formula(note.string);
        ASSERT_GE(expected.size(), 15U);
        expect_alike(seen(note, expected), expected, "stop " + std::to_string(stop));
    }
}

/// source   harmonic inversion [Mandelshtam1997] by a general-purpose tool that knows nothing of strings
/// expects  it finds the same partials, of the open string by the formulas, under a finger by the designed loop
/// margin   3 cents, 10 % of the decay
TEST(FreeVibrationTest, HarmonicInversionFindsTheSamePartials) {
    const Note open = sample_note(0.0, StopEnd::nut);
    expect_alike(inverted(open, partials_by_formula(open.string)), partials_by_formula(open.string), "open");
    const Note stopped = sample_note(17.0, StopEnd::finger);
    expect_alike(inverted(stopped, partials_by_design(stopped)), partials_by_design(stopped), "finger");
}

/// expects  a finger takes more of every partial than a fret at the same place; both end the string where its length
///          says, so the first partial keeps its pitch
/// margin   3 cents
TEST(FreeVibrationTest, FingerTakesMoreOfEveryPartialThanAFret) {
    const Note fret = sample_note(12.0, StopEnd::fret);
    const Note finger = sample_note(12.0, StopEnd::finger);
    const auto hard = seen(fret, partials_by_design(fret));
    const auto soft = seen(finger, partials_by_design(finger));
    ASSERT_EQ(hard.size(), soft.size());
    for (std::size_t i = 0; i < hard.size(); ++i) EXPECT_GT(soft[i].decay, hard[i].decay) << i + 1;
    EXPECT_NEAR(soft[0].hz / hard[0].hz, 1.0, 0.0017);
}
