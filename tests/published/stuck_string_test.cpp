// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/published/cello_d.hpp"
#include "tests/validity.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace {

using namespace sim;
using namespace tests;

constexpr double acceleration = 1.0;  // m/s^2

Friction coulomb(double sticking, double sliding) {
    return {.law = FrictionLaw::coulomb, .static_coefficient = sticking, .sliding_coefficient = sliding};
}

Note lossless_note(const Friction& friction) {
    return note_of(cello_d({.losses = false, .torsion = false, .stiffness = false}), rigid_bridge(), friction);
}

FreePlayed pulled(const Note& note, const Profile& speed, double force, double duration) {
    return play_freely(note, {.drive = {.speed = speed,
                                        .force = constant_profile(force),
                                        .contact_point = constant_profile(cello_d_ratio * note.string.length)},
                              .start = {},
                              .duration = duration});
}

Profile accelerating(double a) { return {{{0.0, 0.0}, {1.0, a}}}; }

double first_slip(const FreePlayed& played) {
    for (std::size_t i = 0; i < played.record.slipping.size(); ++i)
        if (played.record.slipping[i] != 0) return static_cast<double>(i) / played.sample_rate;
    return -1.0;
}

/// 2 Z0 [v(t) + sum_k v(t - k beta P) + sum_k v(t - k (1 - beta) P)], v = a t
double force_by_formula(const Note& note, double time) {
    const double period = 1.0 / fundamental(note.string);
    double sum = acceleration * time;
    for (double delay : {cello_d_ratio * period, (1.0 - cello_d_ratio) * period})
        for (double t = time - delay; t > 0.0; t -= delay) sum += acceleration * t;
    return 2.0 * wave_impedance(note.string) * sum;
}

/// Newtons per metre that a stuck string answers with to a slow pull.
double measured_stiffness(const Note& note) {
    const double speed = 1e-3;
    const double duration = 3.0;
    const FreePlayed played = pulled(note, constant_profile(speed), 1.0, duration);
    const auto periods = static_cast<std::size_t>(10.0 * played.sample_rate / fundamental(note.string));
    const auto mean = [&](std::size_t from) {
        double sum = 0.0;
        for (std::size_t i = from; i < from + periods; ++i) sum += played.record.friction[i];
        return sum / static_cast<double>(periods);
    };
    const std::size_t first = played.record.friction.size() / 2;
    const std::size_t last = played.record.friction.size() - periods;
    const double moved = speed * static_cast<double>(last - first) / played.sample_rate;
    return (mean(last) - mean(first)) / moved;
}

}  // namespace

/// source   travelling waves between a moving point and two rigid ends (derived)
/// expects  friction before the first slip: 2 Z0 [v(t) + sum v(t - k beta P) + sum v(t - k (1 - beta) P)]
/// margin   0.1 % of the force at the end
TEST(StuckString, FrictionBeforeTheFirstSlipFollowsTheReturningWaves) {
    const Note note = lossless_note(coulomb(1e6, 0.3));
    const FreePlayed played = pulled(note, accelerating(acceleration), 1.0, 0.05);
    const double scale = force_by_formula(note, 0.05);
    double worst = 0.0;
    for (double time : {0.0004, 0.002, 0.005, 0.013, 0.03, 0.049}) {
        const auto i = static_cast<std::size_t>(std::lround(time * played.sample_rate));
        const double exact = force_by_formula(note, static_cast<double>(i) / played.sample_rate);
        worst = std::max(worst, std::abs(played.record.friction[i] - exact));
    }
    check({"friction before the first slip: greatest error, of the last force", "", tests::Flag::derived},
          tests::AtMost{worst / scale, 1e-3});
}

/// source   the same formula set to mu_s F (derived)
/// expects  first slip at 34.86 ms for 1 m/s^2 and 1 N, 20.12 ms for 3 m/s^2, 49.31 ms for 2 N; mu_s 1.2
/// margin   a step and 0.1 %
TEST(StuckString, FirstSlipComesWhenTheReturningWavesAskForTooMuch) {
    struct Case {
        double acceleration, force, slip_ms;
    };
    for (const Case& c : {Case{1.0, 1.0, 34.86}, Case{3.0, 1.0, 20.12}, Case{1.0, 2.0, 49.31}}) {
        const FreePlayed played = pulled(lossless_note(coulomb(1.2, 0.3)), accelerating(c.acceleration), c.force, 0.06);
        check({"first slip, " + tests::digits(c.acceleration, "m/s²") + ", " + tests::digits(c.force, "N"), "",
               tests::Flag::derived, "ms"},
              tests::Near{first_slip(played) * 1e3, c.slip_ms, 1e-3 * c.slip_ms + 1e3 / played.sample_rate});
    }
}

/// source   dimensional scaling with Coulomb friction (derived): velocities and forces scale, times don't
/// expects  speed and force times two: every sample bit for bit twice; times three: within rounding
/// margin   none for two, 1e-9 of the greatest value for three
TEST(StuckString, SpeedAndForceScaleTogether) {
    const Note note = note_of(cello_d({}), resistive_bridge(100.0), coulomb(0.8, 0.3));
    const auto run = [&](double times) {
        return pulled(note, {{{0.0, 0.0}, {0.06, 0.05 * times}}}, 0.3 * times, 0.3).record;
    };
    const kernel::Record once = run(1.0);
    const kernel::Record twice = run(2.0);
    const kernel::Record thrice = run(3.0);
    ASSERT_EQ(once.slips.size(), twice.slips.size());
    ASSERT_EQ(once.slips.size(), thrice.slips.size());
    ASSERT_GT(once.slips.size(), 10U);
    double greatest = 0.0;
    for (double value : once.bridge_force) greatest = std::max(greatest, std::abs(value));
    for (std::size_t i = 0; i < once.bridge_force.size(); ++i) {
        ASSERT_EQ(2.0 * once.bridge_force[i], twice.bridge_force[i]) << i;
        ASSERT_NEAR(3.0 * once.bridge_force[i], thrice.bridge_force[i], 3e-9 * greatest) << i;
    }
    record({"speed and force times 2 and 3, Coulomb friction", "", tests::Flag::derived},
           {"forces times 2 and 3", "none; 1e-9",
            "as expected in " + std::to_string(once.bridge_force.size()) + " samples"});
}

/// source   statics of a string pulled aside (derived): T / (L beta (1 - beta)), the twist in series
/// expects  a stuck string, all losses on, answers a slow pull with that stiffness; rigid bridge
/// margin   1 %: the ends return slow motion whole
TEST(StuckString, AnswersASlowPullWithItsStaticStiffness) {
    const double beta = cello_d_ratio;
    for (bool torsion : {false, true}) {
        const Note note = note_of(cello_d({.losses = true, .torsion = torsion, .stiffness = true}), rigid_bridge(),
                                  coulomb(1e6, 0.3));
        const double share = note.string.length * beta * (1.0 - beta);
        double compliance = share / note.string.tension;
        if (torsion) compliance += share / (note.string.torsion_impedance * note.string.torsion_speed);
        check({std::string("stuck string pulled aside slowly: stiffness over T/(L beta (1 - beta))") +
                   (torsion ? ", twist in series" : ""),
               "", tests::Flag::derived},
              tests::Near{measured_stiffness(note) * compliance, 1.0, 0.01});
    }
}

/// source   as above; the body adds (1 - beta)^2 sum 1/(m w^2) (derived)
/// expects  with modes the pull is softer by the bridge's own give
/// margin   1 %
TEST(StuckString, AnswersASlowPullWithTheBridgesGiveToo) {
    const Bridge body{.kind = BridgeKind::modes,
                      .resistance = 0.0,
                      .modes = {{100.0, 20.0, 0.2, 1.0}, {180.0, 25.0, 0.15, 1.0}, {420.0, 15.0, 0.1, 1.0}}};
    const Note note = note_of(cello_d({.losses = true, .torsion = false, .stiffness = true}), body, coulomb(1e6, 0.3));
    const double beta = cello_d_ratio;
    const double compliance = note.string.length * beta * (1.0 - beta) / note.string.tension +
                              (1.0 - beta) * (1.0 - beta) * static_compliance(body);
    check({"the same over a bridge of three modes, their give in series", "", tests::Flag::derived},
          tests::Near{measured_stiffness(note) * compliance, 1.0, 0.01});
}
