// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/second_method/modal_string.hpp"

#include <cassert>
#include <cmath>
#include <complex>
#include <numbers>

namespace tests {

namespace {

using Complex = std::complex<double>;
constexpr double pi = std::numbers::pi;

/// Of a force that runs straight from F0 to F1 within a step, and z = s dt: the weights with which they arrive at its
/// end, first (e^z - 1)/z - last and last (e^z - 1 - z)/z^2, in steps.
struct StraightForce {
    Complex first;
    Complex last;
};
StraightForce straight_force(Complex z) {
    if (std::abs(z) < 1e-3) {  // the differences would lose their digits
        const Complex last = 0.5 + z / 6.0 + z * z / 24.0;
        return {1.0 + z / 2.0 + z * z / 6.0 - last, last};
    }
    const Complex last = (std::exp(z) - 1.0 - z) / (z * z);
    return {(std::exp(z) - 1.0) / z - last, last};
}

/// e of tanh e = Z0/R.
double bridge_share(const sim::String& string, double resistance) {
    return resistance > 0.0 ? std::atanh(sim::wave_impedance(string) / resistance) : 0.0;
}

}  // namespace

std::vector<ModalPartial> partials_by_formula(const sim::String& string, double highest_hz) {
    std::vector<ModalPartial> partials;
    for (int n = 1; sim::partial_frequency(string, n) <= highest_hz; ++n) {
        const double hz = sim::partial_frequency(string, n);
        partials.push_back({.hz = hz, .decay = pi * hz * sim::loss_factor(string, n)});
    }
    return partials;
}

std::vector<ModalPartial> partials_of_loop(const sim::LoopFilter& loop, double highest_hz) {
    std::vector<ModalPartial> partials;
    const double step = 2.0 * pi * 0.5;  // rad/s, half a hertz: the phase turns by far less than pi within it
    double turned = 0.0;                 // rad, at omega
    Complex last = 1.0;
    for (double omega = step; omega <= 2.0 * pi * highest_hz; omega += step) {
        const Complex now = sim::loop_response(loop, omega);
        const double turn = -std::arg(now / last);
        const double due = 2.0 * pi * static_cast<double>(partials.size() + 1);
        if (turned + turn >= due) {
            const double part = (due - turned) / turn;  // of the step
            const double delay = turn / step;           // of the group
            partials.push_back({.hz = (omega - (1.0 - part) * step) / (2.0 * pi),
                                .decay = -std::log(std::abs(last) + part * (std::abs(now) - std::abs(last))) / delay});
        }
        turned += turn;
        last = now;
    }
    return partials;
}

ModalString::ModalString(const sim::String& string, const std::vector<ModalPartial>& partials, const ModalSetUp& set_up)
    : mass_(string.mass_per_length * string.length), contact_ratio_(set_up.contact_point / string.length) {
    assert(!partials.empty() && partials.back().hz < 0.5 * set_up.sample_rate);
    const int rows = static_cast<int>(partials.size()) + 1;
    for (auto* row : {&re_, &im_, &scratch_, &turn_re_, &turn_im_, &gain_re_, &gain_im_, &at_once_re_, &at_once_im_,
                      &bow_re_, &bow_im_, &bridge_re_, &bridge_im_, &own_decay_})
        row->setZero(rows);
    const Ends ends{.impedance = sim::wave_impedance(string),
                    .share = bridge_share(string, set_up.resistance),
                    .step = 1.0 / set_up.sample_rate,
                    .fundamental = sim::fundamental(string)};
    if (set_up.resistance > 0.0) add_mode(0, {}, ends);
    for (int n = 1; n < rows; ++n) add_mode(n, partials[static_cast<std::size_t>(n - 1)], ends);
    yield_ = (bow_re_ * at_once_re_ + bow_im_ * at_once_im_).sum();
    bridge_yield_ = (bridge_re_ * at_once_re_ + bridge_im_ * at_once_im_).sum();
}

void ModalString::add_mode(int n, const ModalPartial& partial, const Ends& ends) {
    const double raised = n == 0 ? 1.0 : partial.hz / (n * ends.fundamental);  // sqrt(1 + B n^2)
    const double decay = partial.decay + 2.0 * ends.fundamental * ends.share * raised * raised;
    const Complex turn = Complex(-decay, 2.0 * pi * partial.hz) * ends.step;
    const Complex bow = std::sin(Complex(n * pi * contact_ratio_, -ends.share * (1.0 - contact_ratio_)));
    const StraightForce weights = straight_force(turn);
    // A mode's velocity answers a force with s/(s^2 + 2 a s + w^2), nothing at rest: its losses let nothing creep.
    const Complex at_rest = n == 0 ? Complex(1.0) : Complex(1.0, partial.decay / (2.0 * pi * partial.hz));
    const Complex push = ends.step / mass_ * at_rest * bow;
    const Complex at_once = weights.last * push;
    const Complex gain = (weights.first + std::exp(turn) * weights.last) * push;
    // Modes n and -n are conjugates: twice the real part.  The bridge feels R b_n phi_n(0), R sinh e = Z0 cosh e.
    const double pair = n == 0 ? 1.0 : 2.0;
    own_decay_[n] = partial.decay;
    turn_re_[n] = std::exp(turn).real(), turn_im_[n] = std::exp(turn).imag();
    gain_re_[n] = gain.real(), gain_im_[n] = gain.imag();
    at_once_re_[n] = at_once.real(), at_once_im_[n] = at_once.imag();
    bow_re_[n] = pair * bow.real(), bow_im_[n] = -pair * bow.imag();
    bridge_im_[n] = pair * ends.impedance * std::cosh(ends.share) * raised;
}

void ModalString::fill_with_helmholtz(double speed) {
    re_.setZero();
    im_.setZero();
    for (int n = 1; n <= modes(); ++n) re_[n] = (n % 2 == 1 ? 1.0 : -1.0) * speed / (n * pi * contact_ratio_);
    keep_sums();
}

void ModalString::push(double force) {
    bridge_force_ = free_bridge_force_ + bridge_yield_ * force;
    scratch_ = turn_re_ * re_ - turn_im_ * im_ + gain_re_ * force;
    im_ = turn_im_ * re_ + turn_re_ * im_ + gain_im_ * force;
    re_.swap(scratch_);
    keep_sums();
}

ModalString::Balance ModalString::balance(double force) const {
    const Eigen::ArrayXd squares = (re_ + at_once_re_ * force).square() + (im_ + at_once_im_ * force).square();
    return {.energy = mass_ * squares.sum(), .loss = 2.0 * mass_ * (own_decay_ * squares).sum()};
}

void ModalString::keep_sums() {
    free_velocity_ = (bow_re_ * re_ + bow_im_ * im_).sum();
    free_bridge_force_ = (bridge_im_ * im_).sum();
}

}  // namespace tests
