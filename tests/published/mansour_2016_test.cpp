// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/bridge_end.hpp"
#include "tests/published/cello_d.hpp"
#include "tests/validity.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace {

using namespace sim;

constexpr double rate = 200000.0;
const Bridge body{
    .kind = BridgeKind::modes,
    .resistance = 0.0,
    .modes = {{100.0, 20.0, 0.3, 1.0}, {180.0, 30.0, 0.15, 1.0}, {520.0, 25.0, 0.1, 1.0}, {1300.0, 8.0, 0.08, 1.0}}};

}  // namespace

/// source   [Mansour2016], cello D: f0 146.8 Hz, T 111 N, L 0.6875 m, EI 3e-4 N m^2 (from memory); the rest derived
/// expects  wave speed 201.85 m/s, impedance 0.5499 kg/s, 2.724 g/m, B 5.64e-5
/// margin   0.1 %, 1 % for B
TEST(Mansour2016, CelloStringHasItsSpeedImpedanceAndStiffness) {
    const String string = tests::cello_d({});
    const auto of = [](const char* what, const char* unit) {
        return tests::Claim{what, "[Mansour2016]", tests::Flag::derived, unit};
    };
    using Share = tests::NearShare;
    check(of("cello D, inputs from memory: wave speed", "m/s"), Share{wave_speed(string), 201.85, 0.001});
    check(of("cello D, inputs from memory: wave impedance", "kg/s"), Share{wave_impedance(string), 0.5499, 0.001});
    check(of("cello D, inputs from memory: mass", "g/m"), Share{string.mass_per_length * 1e3, 2.724, 0.001});
    check(of("cello D, inputs from memory: B of its stiffness", ""), Share{inharmonicity(string), 5.64e-5, 0.01});
}

/// source   a string's end on an admittance: reflection (Z0 Y - 1)/(Z0 Y + 1) (derived)
/// expects  the sampled bridge turns waves round so, and never gives back more than came
/// margin   1 % of the wave
TEST(Mansour2016, BridgeReflectsAsItsAdmittanceSays) {
    const double impedance = 0.9;
    kernel::BridgeEnd end(body, impedance, rate);
    std::vector<double> response;
    for (int i = 0; i < 400000; ++i) response.push_back(end.reflect(i == 0 ? 1.0 : 0.0));
    double worst = 0.0;
    double greatest = 0.0;
    for (double hz : {40.0, 95.0, 100.0, 140.0, 178.0, 180.0, 184.0, 300.0, 520.0, 900.0, 1300.0, 3000.0}) {
        std::complex<double> sum = 0.0;
        const std::complex<double> turn = std::polar(1.0, -2.0 * std::numbers::pi * hz / rate);
        std::complex<double> phase = 1.0;
        for (double value : response) {
            sum += value * phase;
            phase *= turn;
        }
        worst = std::max(worst, std::abs(sum - reflection(body, impedance, hz)));
        greatest = std::max(greatest, std::abs(sum));
    }
    check({"bridge of four modes: greatest error of its reflection, of the wave", "", tests::Flag::derived},
          tests::AtMost{worst, 0.01});
    check({"bridge of four modes: greatest reflection", "", tests::Flag::derived}, tests::AtMost{greatest, 1.0 + 1e-9});
}

/// source   a wolf note's reflection, m 0.15 kg, Q 30, 180 Hz, Z0 0.9 (derived)
/// expects  -0.73 at the mode: the exact form, not -1 + 2 Z0 Y
/// margin   0.01
TEST(Mansour2016, StrongModeNeedsTheExactReflection) {
    const Bridge wolf{.kind = BridgeKind::modes, .resistance = 0.0, .modes = {{180.0, 30.0, 0.15, 1.0}}};
    check({"reflection at a strong mode (0.15 kg, Q 30, 180 Hz, Z 0.9 kg/s)", "", tests::Flag::derived},
          tests::Near{reflection(wolf, 0.9, 180.0).real(), -0.73, 0.01});
}

/// source   a damped mode left alone: exp(-w t / (2 Q)) (derived)
/// expects  a body mode, hardly loaded by the string, dies away so
/// margin   1 % of the decrement over ten periods
TEST(Mansour2016, BodyModeDiesAwayByItsQ) {
    const BridgeMode mode{180.0, 30.0, 0.15, 1.0};
    kernel::BridgeEnd end({.kind = BridgeKind::modes, .resistance = 0.0, .modes = {mode}}, 1e-9, rate);
    const auto peak = [&](double from_s, double to_s, double& now) {
        double greatest = 0.0;
        for (; now < to_s; now += 1.0 / rate) {
            const double velocity = end.reflect(0.0);
            if (now >= from_s) greatest = std::max(greatest, std::abs(velocity));
        }
        return greatest;
    };
    end.reflect(1.0);
    const double period = 1.0 / mode.frequency;
    double now = 0.0;
    const double early = peak(2.0 * period, 3.0 * period, now);
    const double late = peak(12.0 * period, 13.0 * period, now);
    const double decrement = 2.0 * std::numbers::pi * 10.0 / (2.0 * mode.q);
    check({"body mode left alone: its decrement over that of its Q", "", tests::Flag::derived},
          tests::Near{std::log(early / late) / decrement, 1.0, 0.01});
}
