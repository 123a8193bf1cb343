// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/bow.hpp"

#include "analysis/errors.hpp"
#include "sim/kernel/bow_contact.hpp"
#include "sim/kernel/bridge_end.hpp"
#include "sim/law_windows.hpp"
#include "sim/skew.hpp"
#include "sim/stroke.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace {

using namespace sim;

Note bass_octave(const Bow& bow, const Friction& friction = {}) {
    Preset preset = find_preset("division_bass_viol");
    preset.bow = bow;
    preset.friction = friction;
    return make_note(preset, preset.strings.front(), 12.0);
}

Played held(const Note& note, double force, double lengthwise = 0.0) {
    return play_recorded(note, {.contact_point = 0.035,
                                .force = force,
                                .speed = 0.2,
                                .duration = 0.2,
                                .beginning = Beginning::held,
                                .lengthwise = lengthwise});
}

double greatest_difference(const std::vector<double>& a, const std::vector<double>& b) {
    double greatest = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i) greatest = std::max(greatest, std::abs(a[i] - b[i]));
    return greatest;
}

}  // namespace

class OnePlaceTest : public testing::TestWithParam<FrictionLaw> {};

/// source   points at one place share one force and one slip (derived)
/// expects  the friction force of a single point, sample by sample, and a contact as warm
/// margin   1e-6 of the friction.  Not so for the laws of slip speed: each point jumps by the hysteresis rule of its
/// own
TEST_P(OnePlaceTest, HairPointsAreOnePoint) {
    const Note note =
        bass_octave({}, {.law = GetParam(), .static_coefficient = 0.5, .sliding_coefficient = 0.5, .thermal = {}});
    const Stroke stroke{.contact_point = 0.035, .force = 0.2, .speed = 0.2, .duration = 0.05};
    const double rate = sample_rate(note, stroke.contact_point);
    kernel::Note one = kernel_note(note, rate);
    kernel::Note three = one;
    three.hair.points = 3;
    three.hair.width = 0.0;
    const kernel::Drive drive{.speed = constant_profile(0.2),
                              .force = constant_profile(0.2),
                              .contact_point = constant_profile(stroke.contact_point)};
    const kernel::Wanted wanted{.steps = 4000, .waveforms = true};
    const kernel::Record a = kernel::run_reference(one, drive, {}, wanted);
    const kernel::Record b = kernel::run_reference(three, drive, {}, wanted);
    EXPECT_GT(*std::ranges::max_element(a.friction), 0.09);
    EXPECT_LT(greatest_difference(a.friction, b.friction), 1e-6 * 0.1);
    EXPECT_LT(greatest_difference(a.temperature, b.temperature),
              1e-6 * *std::ranges::max_element(a.temperature) + 1e-12);
}

INSTANTIATE_TEST_SUITE_P(Laws, OnePlaceTest, testing::Values(FrictionLaw::thermal, FrictionLaw::coulomb),
                         [](const auto& law) { return std::string(friction_law_name(law.param)); });

/// source   springs in series (derived): the hair's 1/k beside the string's L beta(1-beta)/T and the twist's
/// expects  a slow pull on a sticking string to stretch hair and string by that much more than the string alone
/// margin   1 %
TEST(BowTest, HairGivesInSeriesWithTheString) {
    const Friction sticky{.law = FrictionLaw::coulomb, .static_coefficient = 5.0, .sliding_coefficient = 5.0};
    const auto stiffness = [&](const Bow& bow) {
        Note note = bass_octave(bow, sticky);
        note.bridge = {};
        constexpr double speed = 0.002;
        constexpr double time = 0.25;
        const FreePlayed played = play_freely(note, {.drive = {.speed = constant_profile(speed),
                                                               .force = constant_profile(1.0),
                                                               .contact_point = constant_profile(0.035)},
                                                     .start = {},
                                                     .duration = time});
        const auto end = static_cast<std::ptrdiff_t>(played.record.friction.size());
        double sum = 0.0;  // over whole swings of what the jerk at the beginning left
        const std::ptrdiff_t count = end / 2;
        for (std::ptrdiff_t i = end - count; i < end; ++i) sum += played.record.friction[static_cast<std::size_t>(i)];
        return sum / static_cast<double>(count) / (speed * time * 0.75);
    };
    const double alone = stiffness({});
    const double soft = 2.0 * alone;
    EXPECT_NEAR(stiffness({.stiffness = soft, .resistance = 0.5}), 1.0 / (1.0 / alone + 1.0 / soft),
                0.01 * 2.0 / 3.0 * alone);
}

/// source   a passive bridge gives back no more than it takes, whatever its lean (derived)
/// expects  energy of the waves that come back never to pass that of the waves that went in, both directions together;
///          and without a lean the upright direction to be turned round as by a rigid end
TEST(BowTest, LeaningBridgeIsPassiveAndCouplesOnlyByItsLean) {
    const Preset preset = find_preset("division_bass_viol");
    for (const double lean : {0.0, 0.4, -0.8}) {
        kernel::BridgeEnd bridge(preset.bridge, 0.16, 1e5);
        double taken = 0.0;
        double given = 0.0;
        double crossed = 0.0;
        for (int t = 0; t < 20000; ++t) {
            const kernel::BridgeEnd::Waves in{.bowing = std::sin(0.011 * t) + (t % 700 == 0 ? 1.0 : 0.0),
                                              .upright = std::cos(0.017 * t)};
            const kernel::BridgeEnd::Waves out = bridge.reflect(in, lean);
            taken += in.bowing * in.bowing + in.upright * in.upright;
            given += out.bowing * out.bowing + out.upright * out.upright;
            crossed = std::max(crossed, std::abs(out.upright + in.upright));
            ASSERT_LE(given, taken * (1.0 + 1e-12) + 1e-9) << lean << " at " << t;
        }
        if (lean == 0.0) {
            EXPECT_EQ(crossed, 0.0);
        }
        if (lean != 0.0) {
            EXPECT_GT(crossed, 1e-4);
        }
    }
}

/// source   friction against both slips together: mu F u / sqrt(u^2 + s^2) (derived)
/// expects  that force and the load line to meet at once; and a hair that hardly slides along to rub as one that
/// doesn't
TEST(BowTest, HairThatSlidesAlongRubsAcrossByItsShare) {
    const kernel::Contact contact =
        kernel_contact({.law = FrictionLaw::coulomb, .static_coefficient = 0.6, .sliding_coefficient = 0.6});
    constexpr double give = 3.0;
    for (const double lengthwise : {0.01, 0.2, 2.0})
        for (const double free_slip : {-0.05, 0.3, 1.7}) {
            kernel::Rosin rosin(contact, 1e5);
            const double force = rosin.rub({free_slip, give, lengthwise}, 0.3);
            const double across = 0.6 * 0.3 * rosin.slip() / std::hypot(rosin.slip(), lengthwise);
            EXPECT_NEAR(force, -across, 1e-9);
            EXPECT_NEAR(rosin.slip(), free_slip + give * force, 1e-9);
        }
    kernel::Rosin nearly(contact, 1e5);
    kernel::Rosin straight(contact, 1e5);
    EXPECT_NEAR(nearly.rub({1.7, give, 1e-7}, 0.3), straight.rub(1.7, give, 0.3), 1e-6);
    EXPECT_NEAR(nearly.rub({0.3, give, 1e-7}, 0.3), straight.rub(0.3, give, 0.3), 1e-4);
}

TEST(BowTest, RibbonAndTiltHoldTheMotionInTheMiddleOfTheWindow) {
    for (const Bow& bow : {Bow{.hair_points = 5}, Bow{.hair_points = 3, .hair_in_use = 0.4},
                           Bow{.hair_points = 3, .stiffness = 2.5e5, .resistance = 10.0, .mass = 1.7e-3},
                           Bow{.upright_resistance = 1.3, .bridge_lean = 0.2}}) {
        EXPECT_EQ(held(bass_octave(bow), 0.2).result.verdict.motion, Motion::helmholtz) << bow.hair_points;
    }
}

/// source   common practice, no source: past 10 to 15 degrees the bow slides and whistles; up to 5 it passes low down
/// expects  lengthwise slip as of 20 degrees to end the motion that 1 degree leaves alone
TEST(SkewTest, HairThatSlidesFarLosesTheNote) {
    const Note note = bass_octave({});
    EXPECT_EQ(held(note, 0.2, 0.2 * std::sin(0.0175)).result.verdict.motion, Motion::helmholtz);
    EXPECT_NE(held(note, 0.2, 0.2 * std::sin(0.349)).result.verdict.motion, Motion::helmholtz);
}

TEST(SkewTest, SecurityFallsWithTheAngleAndTheDriftIsGeometry) {
    const Preset preset = find_preset("treble_viol");
    const Note note = make_note(preset, preset.strings.front(), 7.0);
    const SkewPlan plan{.angles = {0.0, 0.35},
                        .stroke_length = 0.3,
                        .grid = {.contact_points = 12, .player_forces = 4, .more_forces = 0}};
    const SkewResult result = find_skew(note, preset.player, plan, {.threads = 2, .progress = {}});
    ASSERT_EQ(result.rows.size(), 2U);
    EXPECT_DOUBLE_EQ(result.rows[1].drift, 0.3 * std::sin(0.35));
    EXPECT_GT(result.rows[0].sliding.security, 0.0);
    EXPECT_LT(result.rows[1].sliding.security, result.rows[0].sliding.security);
    EXPECT_LT(result.rows[1].drifting.security, result.rows[0].drifting.security);
}

TEST(SkewTest, LawsOfSlipSpeedAreRefused) {
    EXPECT_THROW(
        find_skew(bass_octave({}, {.law = FrictionLaw::hyperbola}), find_preset("division_bass_viol").player, {}, {}),
        analysis::InputError);
}

/// expects  the thermal law with an area that grows to be the first, and each law's own name and note in its place
TEST(LawWindowsTest, EveryLawAnswersForEveryNote) {
    const Preset preset = find_preset("treble_viol");
    const std::vector<LawWindow> windows =
        find_law_windows(preset, preset.strings.front(), {.stops = {12.0}, .end = {}, .contact_point = 0.0},
                         {.threads = 2, .progress = {}});
    ASSERT_EQ(windows.size(), laws_compared(preset).size());
    EXPECT_EQ(windows.front().law, "thermal");
    ASSERT_TRUE(windows.front().held.main.has_value());
    for (const LawWindow& window : windows) EXPECT_DOUBLE_EQ(window.contact_point, 0.1 * window.note.string.length);
}
