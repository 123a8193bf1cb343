// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/second_method/modal_string.hpp"

#include "analysis/spectrum.hpp"
#include "analysis/units.hpp"
#include "sim/bridge.hpp"
#include "sim/preset.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>
#include <random>

namespace {

using namespace tests;
using Complex = std::complex<double>;

constexpr double pi = std::numbers::pi;
constexpr double rate = 200000.0;
constexpr double highest_hz = 90000.0;
constexpr double ratio = 0.0931;  // contact point / length

sim::String octave() {
    const sim::Preset preset = sim::find_preset("division_bass_viol");
    return sim::stopped(sim::open_string(preset, preset.strings[0]), 12.0);
}

sim::String ideal_octave() {
    sim::String string = octave();
    string.bending_stiffness = 0.0;
    string.damping = {};
    return string;
}

ModalString modal(const sim::String& string, double resistance) {
    return {string,
            partials_by_formula(string, highest_hz),
            {.resistance = resistance, .contact_point = ratio * string.length, .sample_rate = rate}};
}

/// Velocity under the bow after a knock of one sample.
std::vector<double> knocked(ModalString string, double duration) {
    std::vector<double> velocity;
    for (int t = 0; t < static_cast<int>(duration * rate); ++t) {
        const double force = t == 0 ? 1.0 : 0.0;
        velocity.push_back(string.free_velocity() + string.yield() * force);
        string.push(force);
    }
    return velocity;
}

Complex partial_at(const std::vector<double>& signal, double hz, double from, double length) {
    const std::vector<double> window = analysis::hann_window(length * rate);
    const auto first = static_cast<std::size_t>(std::lround(from * rate));
    Complex sum = 0.0;
    for (std::size_t j = 0; j < window.size(); ++j)
        sum += window[j] * signal[first + j] * std::polar(1.0, -2.0 * pi * hz / rate * static_cast<double>(j));
    return sum;
}

/// J and W as they come up in a run.
struct Account {
    double work = 0.0;
    double lost = 0.0;
    double least_work = 0.0;
};

/// Pushes `steps` forces, noise with the high end taken off, and keeps the account.
Account pushed(ModalString& string, int steps) {
    std::mt19937 random(5);
    std::normal_distribution<double> noise;
    Account account;
    double force = 0.0, last_power = 0.0, last_loss = 0.0;
    for (int t = 0; t < steps; ++t) {
        force += 0.03 * (noise(random) - force);
        const double power = force * (string.free_velocity() + string.yield() * force);
        const double loss = string.balance(force).loss;
        account.work += 0.5 * (power + last_power) / rate;
        account.lost += 0.5 * (loss + last_loss) / rate;
        account.least_work = std::min(account.least_work, account.work);
        last_power = power;
        last_loss = loss;
        string.push(force);
    }
    return account;
}

}  // namespace

/// source   f_n = n f0 sqrt(1 + B n^2), Q_n of [Woodhouse2004] (form from memory); a resistance R returns
///          (R - Z0)/(R + Z0) of a wave once a period (derived), by the modal string at 1 + B n^2 times that rate
/// expects  a knocked modal string rings so
/// margin   0.05 cents, 1 % of the decay: what neighbouring partials spill into the window
TEST(ModalStringTest, KnockedStringRingsWithItsPartialsAndDecays) {
    const sim::String string = octave();
    const double f0 = sim::fundamental(string);
    const double impedance = sim::wave_impedance(string);
    for (double resistance : {0.0, 40.0 * impedance}) {
        const std::vector<double> signal = knocked(modal(string, resistance), 44.0 / f0);
        for (int n = 1; n <= 20; ++n) {
            const double hz = sim::partial_frequency(string, n);
            const double apart = std::round(8.0 / f0 * rate) / rate;
            const Complex early = partial_at(signal, hz, 1.0 / f0, 32.0 / f0);
            const Complex late = partial_at(signal, hz, 1.0 / f0 + apart, 32.0 / f0);
            const double turn = std::remainder(std::arg(late / early) - 2.0 * pi * hz * apart, 2.0 * pi);
            EXPECT_LT(std::abs(analysis::cents_between(hz + turn / (2.0 * pi * apart), hz)), 0.05) << n;
            double decay = pi * hz * sim::loss_factor(string, n);
            if (resistance > 0.0)
                decay +=
                    f0 * std::log((resistance + impedance) / (resistance - impedance)) * std::pow(hz / (n * f0), 2);
            EXPECT_NEAR(std::log(std::abs(early / late)) / apart / decay, 1.0, 0.01) << n << ", R " << resistance;
        }
    }
}

/// source   statics of a string pulled aside (derived)
/// expects  a steady force F moves the bow's place by F L beta (1 - beta) / T; rigid bridge, all losses on
/// margin   1 %: the modes that were left out hold 0.7 %
TEST(ModalStringTest, AnswersASteadyForceWithItsStaticStiffness) {
    sim::String string = octave();
    string.bending_stiffness = 0.0;
    ModalString modes = modal(string, 0.0);
    double moved = 0.0;
    for (int t = 0; t < static_cast<int>(4.0 * rate); ++t) {
        moved += (modes.free_velocity() + modes.yield()) / rate;
        modes.push(1.0);
    }
    const double expected = string.length * ratio * (1.0 - ratio) / string.tension;
    EXPECT_NEAR(moved / expected, 1.0, 0.01);
}

/// source   a flexible, lossless string between a resistance and a rigid end, bowed at x_b (derived): with r = (R -
/// Z0)/(R +
///          Z0), a = e^(-2 s x_b/c), b = e^(-2 s (L - x_b)/c) the admittance there is (1 - r a)(1 - b)/(1 - r a b)/(2
///          Z0)
/// expects  the sampled modes have that admittance along s = 30/s + i w, up to 4 kHz
/// margin   2 % of it, and what the modes over f_N that were left out can add at most: 4 f/(pi f_N), in 1/(2 Z0)
TEST(ModalStringTest, AdmittanceUnderTheBowIsTheTravellingWavesOne) {
    const sim::String string = ideal_octave();
    const double impedance = sim::wave_impedance(string);
    const double resistance = 15.0 * impedance;
    const double reflection = (resistance - impedance) / (resistance + impedance);
    const std::vector<double> answer = knocked(modal(string, resistance), 0.6);
    const double round_trip = 1.0 / sim::fundamental(string);
    for (double hz = 40.0; hz < 4000.0; hz += 53.0) {
        const Complex s(30.0, 2.0 * pi * hz);
        Complex measured = 0.0;
        for (std::size_t t = 0; t < answer.size(); ++t)
            measured += answer[t] * std::exp(-s * (static_cast<double>(t) / rate));
        const Complex a = std::exp(-s * round_trip * ratio);
        const Complex b = std::exp(-s * round_trip * (1.0 - ratio));
        const Complex expected = (1.0 - reflection * a) * (1.0 - b) / (1.0 - reflection * a * b) / (2.0 * impedance);
        const double left_out = 4.0 * hz / (pi * highest_hz) / (2.0 * impedance);
        EXPECT_LT(std::abs(measured - expected), 0.02 * std::abs(expected) + left_out) << hz;
    }
}

/// source   conservation of energy
/// expects  work of any force = energy in the modes + losses; rigid bridge, with losses and without
/// margin   1 %: the force runs straight between samples, the account reads only these
TEST(ModalStringTest, WorkIsEnergyAndLosses) {
    for (const sim::String& string : {octave(), ideal_octave()}) {
        ModalString modes = modal(string, 0.0);
        const Account account = pushed(modes, 100000);
        EXPECT_NEAR((modes.balance(0.0).energy + account.lost) / account.work, 1.0, 0.01);
        EXPECT_GT(account.work, 0.0);
    }
}

/// expects  no force ever gets more out of a modal string than it put in, over a bridge that moves much too
/// margin   a millionth of the work
TEST(ModalStringTest, NeverGivesBackMoreThanItGot) {
    const sim::String string = octave();
    for (double times : {15.0, 100.0}) {
        ModalString modes = modal(string, times * sim::wave_impedance(string));
        const Account account = pushed(modes, 100000);
        EXPECT_GE(account.least_work, -1e-6 * account.work) << times;
    }
}

/// source   the round trip of loop_filter.hpp, which is fitted to the same formulas
/// expects  partials read off the loop are those of the formulas where the fit answers for them (here to n = 14)
/// margin   3 cents, 10 % of the decay
TEST(ModalStringTest, PartialsOfTheLoopAreThoseOfTheFormulas) {
    const sim::String string = octave();
    const auto formula = partials_by_formula(string, 8000.0);
    const auto loop = partials_of_loop(sim::design_transverse_loop(string, 0.0), 8000.0);
    ASSERT_EQ(formula.size(), loop.size());
    ASSERT_EQ(formula.size(), 14U);
    for (std::size_t i = 0; i < formula.size(); ++i) {
        EXPECT_LT(std::abs(analysis::cents_between(loop[i].hz, formula[i].hz)), 3.0) << i + 1;
        EXPECT_NEAR(loop[i].decay / formula[i].decay, 1.0, 0.1) << i + 1;
    }
}
