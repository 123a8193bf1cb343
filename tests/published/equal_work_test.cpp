// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/published/cello_d.hpp"
#include "tests/validity.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>

namespace {

using namespace sim;
using namespace tests;
using Complex = std::complex<double>;

constexpr double pi = std::numbers::pi;
constexpr double speed = 0.05;       // m/s
constexpr double resistance = 20.0;  // kg/s, so that the bridge takes a good part
constexpr double highest_hz = 40000.0;

/// Mean powers over the last whole periods of a run, W.
struct Powers {
    double bow = 0.0;     ///< friction times bow speed
    double heat = 0.0;    ///< friction times slip speed
    double bridge = 0.0;  ///< force squared over resistance
    double stop = 0.0;    ///< what the losses of string and twist take
    double losses() const { return heat + bridge + stop; }
};

/// The end of a signal: as many whole periods as fit into half of it.
std::span<const double> last_periods(const std::vector<double>& signal, double rate, double hz) {
    const double period = rate / hz;
    const double count = std::floor(0.5 * static_cast<double>(signal.size()) / period);
    return std::span(signal).last(static_cast<std::size_t>(std::lround(count * period)));
}

template <class Product>
double mean(std::size_t count, const Product& product) {
    double sum = 0.0;
    for (std::size_t i = 0; i < count; ++i) sum += product(i);
    return sum / static_cast<double>(count);
}

/// sum of Z |w_n|^2/2 (1 - |H|^2) over the harmonics of a wave that runs to the stop, H what the designed loop returns.
double lost_at_stop(const kernel::Lines& lines, std::span<const analysis::Partial> wave) {
    double sum = 0.0;
    for (const analysis::Partial& partial : wave)
        sum += 0.5 * lines.impedance * partial.amplitude * partial.amplitude *
               (1.0 - std::norm(loop_response(lines.loop, 2.0 * pi * partial.hz)));
    return sum;
}

/// Transverse wave that runs from the bow to the stop: what the bridge sent, a bow's distance later, and half the push.
std::vector<double> wave_to_stop(const Played& played, const kernel::Note& note, double contact_point) {
    const double reflection = (note.transverse.impedance - resistance) / (note.transverse.impedance + resistance);
    const auto delay = static_cast<std::size_t>(std::lround(contact_point / note.transverse.speed * note.sample_rate));
    const auto& force = played.record.bridge_force;
    std::vector<double> wave(force.size(), 0.0);
    for (std::size_t i = delay; i < wave.size(); ++i) {
        const double in = force[i - delay] / (note.transverse.impedance * (1.0 - reflection));
        wave[i] = reflection * in + played.record.friction[i] / (2.0 * note.transverse.impedance);
    }
    return wave;
}

/// Torsional wave likewise, harmonic by harmonic.  With p half the push, r the way bow-bridge-bow and H the round trip,
/// the bridge rigid: to the stop b = p - r a, to the bridge a = p - H/r b, so b = p (1 - r)/(1 - H).
std::vector<analysis::Partial> twist_to_stop(std::vector<analysis::Partial> friction, const kernel::Lines& twist,
                                             double contact_point) {
    for (analysis::Partial& partial : friction) {
        const double omega = 2.0 * pi * partial.hz;
        const Complex near = std::polar(1.0, -2.0 * omega * contact_point / twist.speed);
        partial.amplitude *=
            std::abs((1.0 - near) / (1.0 - loop_response(twist.loop, omega))) / (2.0 * twist.impedance);
    }
    return friction;
}

Powers powers_of(const Note& note, double force) {
    const Stroke stroke = held_stroke(note, {.ratio = cello_d_ratio, .force = force, .speed = speed});
    const Played played = play_recorded(note, stroke);
    EXPECT_EQ(played.result.verdict.motion, Motion::helmholtz);
    const double rate = played.result.sample_rate;
    const double hz = played.result.tone.pitch.value_or(cello_d_hz);
    const kernel::Note ready = kernel_note(note, rate);
    const auto friction = last_periods(played.record.friction, rate, hz);
    const auto velocity = last_periods(played.record.velocity, rate, hz);
    const auto bridge = last_periods(played.record.bridge_force, rate, hz);
    Powers powers;
    powers.bow = mean(friction.size(), [&](std::size_t i) { return friction[i] * speed; });
    powers.heat = mean(friction.size(), [&](std::size_t i) { return friction[i] * (speed - velocity[i]); });
    powers.bridge = mean(bridge.size(), [&](std::size_t i) { return bridge[i] * bridge[i] / resistance; });
    const std::vector<double> wave = wave_to_stop(played, ready, stroke.contact_point);
    powers.stop = lost_at_stop(ready.transverse,
                               analysis::measure_partials(last_periods(wave, rate, hz), rate, {hz, highest_hz}));
    if (ready.torsional.impedance > 0.0)
        powers.stop +=
            lost_at_stop(ready.torsional, twist_to_stop(analysis::measure_partials(friction, rate, {hz, highest_hz}),
                                                        ready.torsional, stroke.contact_point));
    return powers;
}

}  // namespace

/// source   conservation of energy (derived).  Losses are found without the kernel's lines: heat from friction and
/// slip,
///          the bridge's from its force and resistance, the string's from the harmonics that run into the stop and the
///          designed round trip
/// expects  friction times bow speed = heat + losses of bridge, string and twist, as means over whole periods of a
///          steady motion; thermal law; a cello string with and without twist, and one whose own losses (Q 100) weigh
/// margin   1 %
TEST(EqualWork, WhatTheBowGivesIsHeatAndLosses) {
    struct Case {
        bool torsion;
        double friction_loss, force, least_string_share;
    };
    for (const Case& c : {Case{true, 3e-4, 0.3, 0.03}, Case{false, 3e-4, 0.3, 0.01}, Case{true, 1e-2, 0.4, 0.1}}) {
        String string = cello_d({.losses = true, .torsion = c.torsion, .stiffness = true});
        string.damping.friction = c.friction_loss;
        const Powers powers = powers_of(note_of(string, resistive_bridge(resistance), {}), c.force);
        SCOPED_TRACE(powers.heat / powers.bow);
        tests::check({std::string("heat and losses over the bow's work, cello D") + (c.torsion ? "" : " without twist"),
                      "", tests::Flag::derived},
                     tests::NearShare{.got = powers.losses() / powers.bow, .expected = 1.0, .within_share = 0.01});
        EXPECT_GT(powers.heat, 0.05 * powers.bow);
        EXPECT_GT(powers.bridge, 0.05 * powers.bow);
        EXPECT_GT(powers.stop, c.least_string_share * powers.bow);
    }
}
