// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/bridge_end.hpp"
#include "sim/kernel/end_filter.hpp"
#include "sim/kernel/slip_watch.hpp"
#include "sim/note.hpp"
#include "sim/profile.hpp"
#include "sim/stroke.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace {

using namespace sim;

/// Least of the energy kept so far, wave in less wave out, over 40 000 samples of noise.
template <class End>
double least_energy_kept(const End& turn) {
    std::mt19937 random(11);
    std::normal_distribution<double> noise;
    double kept = 0.0;
    double least = 0.0;
    for (int i = 0; i < 40000; ++i) {
        const double in = noise(random);
        const double out = turn(in);
        kept += in * in - out * out;
        least = std::min(least, kept);
    }
    return least;
}

std::vector<kernel::Slip> seen(const std::vector<double>& slip_speeds, double full, kernel::Record& record) {
    kernel::SlipWatch watch(1000.0);
    for (std::size_t i = 0; i < slip_speeds.size(); ++i)
        if (watch.see(static_cast<long>(i), slip_speeds[i], full)) record.slips.push_back(watch.slip());
    record.slipping_since = watch.slips() ? watch.slip().start : -1.0;
    return record.slips;
}

}  // namespace

/// expects  no end ever returns more energy than it was given, at any moment, whatever comes
/// margin   rounding
TEST(BridgeEndTest, BridgeNeverGivesBackMoreThanItGot) {
    const Preset bass = find_preset("division_bass_viol");
    ASSERT_EQ(bass.bridge.kind, BridgeKind::modes);
    const Bridge wolf{.kind = BridgeKind::modes, .resistance = 0.0, .modes = {{180.0, 30.0, 0.02, 1.0}}};
    const Bridge resistance{.kind = BridgeKind::resistance, .resistance = 5.0, .modes = {}};
    for (const Bridge& bridge : {bass.bridge, wolf, resistance, Bridge{}}) {
        kernel::BridgeEnd end(bridge, 0.9, 120000.0);
        EXPECT_GE(least_energy_kept([&](double in) { return end.reflect(in); }), -1e-9);
    }
}

TEST(BridgeEndTest, RigidBridgeTurnsWavesUpsideDownAndAResistanceAlike) {
    kernel::BridgeEnd rigid({}, 0.5, 1e5);
    EXPECT_DOUBLE_EQ(rigid.reflect(0.7), -0.7);
    kernel::BridgeEnd matched({.kind = BridgeKind::resistance, .resistance = 0.5, .modes = {}}, 0.5, 1e5);
    EXPECT_DOUBLE_EQ(matched.reflect(0.7), 0.0);  // R = Z0 takes all
    kernel::BridgeEnd hard({.kind = BridgeKind::resistance, .resistance = 1.5, .modes = {}}, 0.5, 1e5);
    EXPECT_DOUBLE_EQ(hard.reflect(0.7), -0.35);  // (1/3 - 1)/(1/3 + 1) = -1/2
}

/// source   a mode of mass m on a string: its own decay w/(2Q) and the string's 2 Z0/(2m) beside it, since waves that
///          it sends off don't come back (derived: m dv/dt + (m w/Q + Z0) v + m w^2 x = 0)
/// expects  decay rate w/(2Q) + Z0/(2m) = 18.85 + 3.33 1/s
/// margin   1 %
TEST(BridgeEndTest, StringTakesFromAModeWhatItsImpedanceAsks) {
    const BridgeMode mode{180.0, 30.0, 0.15, 1.0};
    kernel::BridgeEnd end({.kind = BridgeKind::modes, .resistance = 0.0, .modes = {mode}}, 1.0, 200000.0);
    end.reflect(1.0);
    const auto energy_of_periods = [&](double count) {
        double sum = 0.0;
        for (int i = 0; i < static_cast<int>(std::lround(count / mode.frequency * 200000.0)); ++i) {
            const double v = end.reflect(0.0);
            sum += v * v;
        }
        return sum;
    };
    const double early = energy_of_periods(4.0);
    const double late = energy_of_periods(4.0);
    const double rate = 0.5 * std::log(early / late) / (4.0 / mode.frequency);
    const double expected = std::numbers::pi * 180.0 / 30.0 + 1.0 / 0.3;
    EXPECT_NEAR(rate, expected, 0.01 * expected);
}

TEST(EndFilterTest, StopNeverGivesBackMoreThanItGot) {
    const Preset bass = find_preset("division_bass_viol");
    for (double stop : {0.0, 5.0, 12.0, 20.0})
        for (std::size_t i : {0U, 5U}) {
            const Note note = make_note(bass, bass.strings[i], stop);
            kernel::EndFilter transverse(note.transverse, 150000.0);
            EXPECT_GE(least_energy_kept([&](double in) { return transverse.process(in); }), -1e-9) << stop;
            kernel::EndFilter torsional(note.torsional, 150000.0);
            EXPECT_GE(least_energy_kept([&](double in) { return torsional.process(in); }), -1e-9) << stop;
        }
}

/// expects  a filter of delay and dispersion alone gives all back in the end
/// margin   1e-9, what is still inside after 0.5 s
TEST(EndFilterTest, StopWithoutLossesGivesAllBack) {
    const Preset bass = find_preset("division_bass_viol");
    String string = open_string(bass, bass.strings[0]);
    string.damping = {};
    kernel::EndFilter filter(design_transverse_loop(string, 0.0), 96000.0);
    double energy = 0.0;
    for (int i = 0; i < 48000; ++i) {
        const double out = filter.process(i == 0 ? 1.0 : 0.0);
        energy += out * out;
    }
    EXPECT_NEAR(energy, 1.0, 1e-9);
}

/// Full slip 1 m/s, 1000 samples a second: a slip begins over 0.25 and ends under 0.10.
TEST(SlipWatchTest, SlipBeginsOverAQuarterAndEndsUnderATenth) {
    kernel::Record record;
    const auto slips = seen({0.0, 0.2, 0.3, 1.0, 0.2, 0.11, 0.3, 0.09, 0.2, 0.0}, 1.0, record);
    ASSERT_EQ(slips.size(), 1U);
    EXPECT_DOUBLE_EQ(slips[0].start, 0.002);
    EXPECT_DOUBLE_EQ(slips[0].end, 0.007);
    EXPECT_NEAR(slips[0].distance, 2.0e-3, 1e-12);  // 0.3 + 1.0 + 0.2 + 0.11 + 0.3 + 0.09, times 1 ms
    EXPECT_LT(record.slipping_since, 0.0);
}

/// expects  a sample's time for each sample of the run's second half in which the contact slips
/// margin   rounding of a sum of some thousand terms
TEST(ReferenceRunTest, TimeSlippedLateIsThatOfTheSecondHalf) {
    const Preset bass = find_preset("division_bass_viol");
    const Note note = make_note(bass, bass.strings[0], 12.0);
    const kernel::Record record =
        play_recorded(note, {.contact_point = 0.04, .force = 0.2, .speed = 0.2, .rise = 0.01, .duration = 0.05}).record;
    const auto half = static_cast<std::ptrdiff_t>(record.slipping.size() / 2);
    const auto late = std::count(record.slipping.begin() + half, record.slipping.end(), 1);
    ASSERT_GT(late, 0);
    EXPECT_NEAR(record.slipped_time_late, static_cast<double>(late) / sample_rate(note, 0.04), 1e-12);
}

TEST(SlipWatchTest, SlipThatIsStillOnIsToldAndRunsTheOtherWayDoNotCount) {
    kernel::Record record;
    EXPECT_TRUE(seen({0.0, -0.9, -0.9, 0.0, 0.5, 0.9}, 1.0, record).empty());
    EXPECT_DOUBLE_EQ(record.slipping_since, 0.004);
}

TEST(ProfileTest, RunsStraightBetweenItsMomentsAndStaysBeyond) {
    const Profile profile{{{1.0, 2.0}, {3.0, 6.0}, {4.0, 0.0}}};
    EXPECT_DOUBLE_EQ(value_at(profile, 0.0), 2.0);
    EXPECT_DOUBLE_EQ(value_at(profile, 2.0), 4.0);
    EXPECT_DOUBLE_EQ(value_at(profile, 3.25), 4.5);
    EXPECT_DOUBLE_EQ(value_at(profile, 9.0), 0.0);
    EXPECT_DOUBLE_EQ(smallest_value(profile), 0.0);
    EXPECT_DOUBLE_EQ(greatest_value(profile), 6.0);
}

TEST(ProfileTest, RisesFromNothingAndWithoutATimeAtOnce) {
    const Profile rise = rising_profile({.value = 0.2, .time = 0.06});
    EXPECT_DOUBLE_EQ(value_at(rise, 0.0), 0.0);
    EXPECT_DOUBLE_EQ(value_at(rise, 0.03), 0.1);
    EXPECT_DOUBLE_EQ(value_at(rise, 1.0), 0.2);
    EXPECT_EQ(rising_profile({.value = 0.2, .time = 0.0}), constant_profile(0.2));
}
