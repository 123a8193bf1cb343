// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/ring.hpp"

#include "analysis/decimate.hpp"
#include "analysis/partials.hpp"
#include "analysis/units.hpp"
#include "sim/stroke.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace sim;

Note treble_d(StopEnd end, double finger_q, const Bridge& bridge) {
    Preset preset = find_preset("division_bass_viol");
    preset.finger_q = finger_q;
    preset.bridge = bridge;
    return make_note(preset, preset.strings[0], 12.0, end);
}

/// The note let go in Helmholtz motion with no force on the bow.
FreePlayed let_go(const Note& note, double seconds) {
    const Profile speed = constant_profile(0.2);
    return play_freely(
        note, {.drive = {.speed = speed, .force = constant_profile(0.0), .contact_point = constant_profile(0.03)},
               .start = {.helmholtz = true, .speed = 0.2},
               .duration = seconds});
}

/// Decay of one partial, 1/s, from its amplitude around two moments.
double measured_decay(const FreePlayed& played, const RingingPartial& partial, double early, double late) {
    constexpr double window = 0.08;  // s
    const auto at = [&](double moment) {
        const auto first = static_cast<std::size_t>((moment - window / 2.0) * played.sample_rate);
        const auto count = static_cast<std::size_t>(window * played.sample_rate);
        const std::span<const double> part = std::span(played.record.bridge_force).subspan(first, count);
        const auto partials = analysis::measure_partials(
            part, played.sample_rate,
            {partial.frequency / partial.number, partial.frequency * (1.0 + 0.5 / partial.number)});
        return partials[static_cast<std::size_t>(partial.number) - 1].amplitude;
    };
    return std::log(at(early) / at(late)) / (late - early);
}

const Bridge body{
    .kind = BridgeKind::modes, .resistance = 0.0, .modes = {{180.0, 30.0, 0.15, 1.0}, {610.0, 20.0, 0.1, 1.0}}};

}  // namespace

/// expects  the simulated string, let go, dies away as its poles say: fret and finger, rigid bridge and body
/// margin   3 % of the decay: the window sees a decaying sine, and neighbours leak
TEST(RingTest, FreeRunDiesAwayAsThePolesSay) {
    for (const bool finger : {false, true})
        for (const bool rigid : {true, false}) {
            const Note note = treble_d(finger ? StopEnd::finger : StopEnd::fret, 100.0, rigid ? Bridge{} : body);
            const FreePlayed played = let_go(note, 0.5);
            for (const RingingPartial& partial : ringing_partials(note, 6)) {
                const double decay = measured_decay(played, partial, 0.1, 0.1 + 2.0 / std::max(partial.decay, 8.0));
                EXPECT_NEAR(decay / partial.decay, 1.0, 0.03)
                    << "partial " << partial.number << (finger ? ", finger" : ", fret") << (rigid ? "" : ", body");
            }
        }
}

/// source   Q of a partial from the string's losses and the pad (derived): 1/Q adds; pad's mean over four as asked
/// expects  over a rigid bridge a fret leaves the string's own Q; a finger of Q 100 takes 1/Q up by 0.01 in the mean
/// margin   10 % of the string's loss (the loop's fit), 10 % of the finger's (its logarithm is not linear)
TEST(RingTest, LossesOfStringAndFingerAdd) {
    const Note fret = treble_d(StopEnd::fret, 100.0, {});
    const Note finger = treble_d(StopEnd::finger, 100.0, {});
    const auto hard = ringing_partials(fret, 4);
    const auto soft = ringing_partials(finger, 4);
    double mean = 0.0;
    for (int i = 0; i < 4; ++i) {
        EXPECT_NEAR(1.0 / *hard[i].q / loss_factor(fret.string, i + 1.0), 1.0, 0.1) << i;
        mean += 0.25 * (1.0 / *soft[i].q - 1.0 / *hard[i].q);
    }
    EXPECT_NEAR(mean, 0.01, 0.001);
}

/// source   one term of a sum of powers (derived)
/// expects  a lone partial's ring time is ln(1000)/decay; losses of the string alone as one Q give the known sum
TEST(RingTest, RingTimeIsThatOfTheSumOfPowers) {
    std::vector<RingingPartial> partials{
        {.number = 1, .frequency = 100.0, .decay = 2.0, .q = 157.0, .ring_time = 3.45}};
    EXPECT_NEAR(*ring_time(partials), std::log(1000.0) / 2.0, 1e-6);
    partials.push_back({.number = 2, .frequency = 200.0, .decay = 1e6, .q = 1.0, .ring_time = 1e-5});
    EXPECT_NEAR(*ring_time(partials), std::log(1000.0 / std::sqrt(1.25)) / 2.0, 1e-6);
}

/// expects  no loss, no time
TEST(RingTest, StringWithoutLossRingsForEver) {
    Preset preset = find_preset("division_bass_viol");
    preset.bridge = {};
    preset.strings[0].damping = false;
    const auto partials = ringing_partials(make_note(preset, preset.strings[0], 12.0), 5);
    for (const RingingPartial& partial : partials) EXPECT_FALSE(partial.q.has_value());
    EXPECT_FALSE(ring_time(partials).has_value());
}
