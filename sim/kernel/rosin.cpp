// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/rosin.hpp"

#include <algorithm>
#include <cmath>

namespace sim::kernel {

namespace {

constexpr double close_enough = 1e-12;  // relative step at which the search for the sliding speed ends
constexpr int most_steps = 100;

}  // namespace

Rosin::Rosin(const Contact& contact, double sample_rate, const Warmth& warmth)
    : contact_(contact), heat_(contact.heat, 1.0 / sample_rate, warmth) {}

void Rosin::take_up(const Rosin& before) {
    heat_.take_up(before.heat_);
    power_ = before.power_;
    owed_ = before.owed_;
    slip_ = before.slip_;
    slips_ = before.slips_;
}

double Rosin::rub(const Rubbing& rubbing, double bow_force) {
    begin(rubbing.lengthwise);
    look();
    double force = try_out(rubbing, bow_force);
    if (!settled()) {
        look();
        force = try_out(rubbing, bow_force);
    }
    finish();
    return force;
}

double Rosin::speed_along(double lengthwise) const {
    return lengthwise > 0.0 ? std::hypot(slip_, lengthwise) : std::abs(slip_);
}

void Rosin::begin(double lengthwise) {
    slipped_ = slips_;
    looks_ = 0;
    if (contact_.kind == Contact::Kind::thermal) heat_.begin(speed_along(lengthwise));
}

/// The warm law is one of sign alone at the warmth that this sample ends with: found from the last sample's heat, then
/// once more from the mean of the last one's and this one's.  Heun's rule: the runaway at release (slip warms, warmth
/// eases slip) grows as it should while it multiplies the slip by less than about 2.5 in a sample.  What the second
/// look still changes is owed to the next sample, so that no heat is lost.
void Rosin::look() {
    if (contact_.kind != Contact::Kind::thermal) return;
    if (looks_++ > 0) guess_ = power_;
    coefficient_ = coefficient_when(heat_.temperature_with(owed_ + 0.5 * power_));
}

bool Rosin::of_sign_alone() const {
    return contact_.kind == Contact::Kind::thermal ||
           (contact_.kind == Contact::Kind::coulomb && contact_.static_coefficient == contact_.sliding_coefficient);
}

double Rosin::bears(double bow_force) const {
    return bow_force * (contact_.kind == Contact::Kind::thermal ? coefficient_ : contact_.sliding_coefficient);
}

double Rosin::try_out(const Rubbing& rubbing, double bow_force) {
    switch (contact_.kind) {
        case Contact::Kind::thermal: {
            const double bears = coefficient_ * bow_force;
            const double force = rub_with_steady_coefficients(rubbing, bears, bears);
            const double crowding = contact_.heat.area_grows_with_force ? 1.0 : bow_force;  // spots are those of 1 N
            power_ = coefficient_ * speed_along(rubbing.lengthwise) * crowding;
            return force;
        }
        case Contact::Kind::coulomb:
            return rub_with_steady_coefficients(rubbing, contact_.static_coefficient * bow_force,
                                                contact_.sliding_coefficient * bow_force);
        case Contact::Kind::double_exponential:
        case Contact::Kind::hyperbola:
            break;
    }
    return rub_on_curve(rubbing.free_slip, rubbing.yield, bow_force);
}

void Rosin::finish() {
    if (contact_.kind != Contact::Kind::thermal) return;
    if (looks_ < 2) {
        heat_.finish(0.0);
        return;
    }
    heat_.finish(owed_ + 0.5 * guess_);
    owed_ = power_ - 0.5 * guess_;
}

double Rosin::coefficient_when(double temperature) const {
    const std::vector<double>& table = contact_.table;
    const double place = std::max(0.0, temperature / contact_.table_step);
    const double last = static_cast<double>(table.size() - 1);
    if (place >= last) return table.back();
    const auto i = static_cast<std::size_t>(place);
    const double part = place - static_cast<double>(i);
    return table[i] + part * (table[i + 1] - table[i]);
}

double Rosin::stick(double free_slip, double yield) {
    slips_ = false;
    slip_ = 0.0;
    return -free_slip / yield;
}

double Rosin::slide(double free_slip, double yield, double force) {
    slips_ = true;
    slip_ = free_slip + yield * force;
    return force;
}

/// Sticking bears `greatest`, sliding gives `sliding` (N), both without regard to the speed.
double Rosin::rub_with_steady_coefficients(const Rubbing& rubbing, double greatest, double sliding) {
    if (rubbing.lengthwise > 0.0) return rub_askew(rubbing, sliding);
    const double needed = std::abs(rubbing.free_slip) / rubbing.yield;
    if (sliding < greatest) {  // a stick holds to the greater force; a slip holds while there is a sliding speed
        const bool holds = slipped_ ? needed <= sliding : needed <= greatest;
        if (holds) return stick(rubbing.free_slip, rubbing.yield);
    } else if (needed <= greatest) {
        return stick(rubbing.free_slip, rubbing.yield);
    }
    return slide(rubbing.free_slip, rubbing.yield, rubbing.free_slip > 0.0 ? -sliding : sliding);
}

/// u + yield * friction * u / sqrt(u^2 + s^2) = |free slip|: the left side rises and bends down, so Newton's steps from
/// below stay below and close in.
double Rosin::rub_askew(const Rubbing& rubbing, double friction) {
    const double offset = std::abs(rubbing.free_slip);
    const double s2 = rubbing.lengthwise * rubbing.lengthwise;
    const double pull = rubbing.yield * friction;
    double u = std::max(0.0, offset - pull);
    for (int step = 0; step < most_steps; ++step) {
        const double root = std::sqrt(u * u + s2);
        const double move = (offset - u - pull * u / root) / (1.0 + pull * s2 / (root * root * root));
        u += move;
        if (std::abs(move) <= close_enough * offset) break;
    }
    const double across = friction * u / std::sqrt(u * u + s2);
    const double force = rubbing.free_slip > 0.0 ? -across : across;
    slide(rubbing.free_slip, rubbing.yield, force);
    slips_ = u > rubbing.lengthwise;
    return force;
}

double Rosin::coefficient_at(double u) const {
    if (contact_.kind == Contact::Kind::double_exponential)
        return 0.35 + 0.45 * std::exp(-u / 0.1) + 0.4 * std::exp(-u / 0.01);
    const double drop = contact_.static_coefficient - contact_.sliding_coefficient;
    return contact_.sliding_coefficient + drop * contact_.corner_speed / (contact_.corner_speed + u);
}

double Rosin::slope_at(double u) const {
    if (contact_.kind == Contact::Kind::double_exponential)
        return -4.5 * std::exp(-u / 0.1) - 40.0 * std::exp(-u / 0.01);
    const double drop = contact_.static_coefficient - contact_.sliding_coefficient;
    const double sum = contact_.corner_speed + u;
    return -drop * contact_.corner_speed / (sum * sum);
}

/// Load line against curve: h(u) = (|free slip| - u) / yield - F mu(u) = 0.
///
/// h is concave, so Newton's steps from the right come down to the greater root without passing it, or past the top
/// of h where there is none.  A stick holds up to mu(0) F; a slip holds while that root exists.
double Rosin::rub_on_curve(double free_slip, double yield, double bow_force) {
    const double offset = std::abs(free_slip);
    if (!slipped_ && offset <= yield * coefficient_at(0.0) * bow_force) return stick(free_slip, yield);
    double u = offset;
    for (int step = 0; step < most_steps; ++step) {
        const double h = (offset - u) / yield - bow_force * coefficient_at(u);
        const double slope = -1.0 / yield - bow_force * slope_at(u);
        if (slope >= 0.0) return stick(free_slip, yield);
        const double move = h / slope;
        u -= move;
        if (u <= 0.0) return stick(free_slip, yield);
        if (std::abs(move) <= close_enough * offset) break;
    }
    const double force = bow_force * coefficient_at(u);
    return slide(free_slip, yield, free_slip > 0.0 ? -force : force);
}

}  // namespace sim::kernel
