// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/note.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sim {

namespace {

constexpr int table_steps = 2000;        // of the whole range of temperatures
constexpr double greatest_speed = 50.0;  // m/s, where the walk along steady sliding ends
constexpr double speed_factor = 1.0005;  // between one point of the walk and the next
constexpr double shortest_time = 4e-6;   // s, of the branches; quicker ones are taken as part of the layer
constexpr double time_factor = 16.0;     // between branches: the root is met within 0.4 % (see half_space)
constexpr int branch_count = 5;          // up to 0.26 s: there the spreading all round has long taken over

/// sqrt(s) = (ln r / pi) sum tau^(-1/2) s tau / (1 + s tau) over tau = tau_0 r^i, i from -infinity to infinity.
///
/// The trapezoidal rule for the integral over ln tau of a hyperbolic secant, so the relative error is about
/// 4 exp(-2 pi^2 / ln r): 0.3 % for r = 16.  (derived)
void add_half_space(kernel::HeatPath& path, double effusivity_area) {
    const double weight = std::log(time_factor) / std::numbers::pi * effusivity_area;
    for (int i = 0; i < branch_count; ++i) {
        const double time = shortest_time * std::pow(time_factor, i);
        path.branches.push_back({.time = time, .conductance = weight / std::sqrt(time)});
    }
    const double root = std::sqrt(time_factor);
    const double quicker = weight * std::sqrt(shortest_time) / (root - 1.0);  // sum of the capacities left out
    path.capacity += 2.0 * quicker;
    path.renewed_capacity += quicker;
}

kernel::HeatPath heat_path(const ThermalContact& contact) {
    kernel::HeatPath path;
    const double area = 1.0 / contact.contact_pressure;  // m^2 per newton
    const double spots = area / (std::numbers::pi * contact.spot_radius * contact.spot_radius);
    const double volume_heat = contact.density * contact.specific_heat;
    path.capacity = volume_heat * contact.layer * area;
    path.renewed_capacity = 0.5 * path.capacity;
    path.spread = 4.0 * contact.conductivity * contact.spot_radius * spots;
    path.renewal_length = 0.5 * std::numbers::pi * contact.spot_radius;
    path.area_grows_with_force = contact.area_grows_with_force;
    add_half_space(path, std::sqrt(contact.conductivity * volume_heat) * area);
    return path;
}

/// W/K that leave the contact's layer when it slides steadily.
double steady_loss(const kernel::HeatPath& path, double speed) {
    const double renewal = speed / path.renewal_length;
    double loss = 2.0 * path.spread + renewal * path.renewed_capacity;
    for (const kernel::HeatPath::Branch& branch : path.branches)
        loss += branch.conductance * renewal * branch.time / (1.0 + renewal * branch.time);
    return loss;
}

/// mu over theta on an even grid, straight between the points of a walk along steady sliding at 1 N.
void add_table(kernel::Contact& contact) {
    const auto temperature = [&](double speed) {
        return steady_sliding_fit(speed) * speed / steady_loss(contact.heat, speed);
    };
    contact.table_step = temperature(greatest_speed) / table_steps;
    contact.table = {steady_sliding_fit(0.0)};
    double last_theta = 0.0;
    double last_mu = contact.table.front();
    for (double speed = 1e-5; speed < greatest_speed; speed *= speed_factor) {
        const double theta = temperature(speed);
        const double mu = steady_sliding_fit(speed);
        for (double next = static_cast<double>(contact.table.size()) * contact.table_step; next <= theta;
             next = static_cast<double>(contact.table.size()) * contact.table_step)
            contact.table.push_back(last_mu + (mu - last_mu) * (next - last_theta) / (theta - last_theta));
        last_theta = std::max(last_theta, theta);
        last_mu = mu;
    }
    contact.table.push_back(last_mu);
}

}  // namespace

kernel::Contact kernel_contact(const Friction& friction) {
    kernel::Contact contact;
    contact.static_coefficient = friction.static_coefficient;
    contact.sliding_coefficient = friction.sliding_coefficient;
    contact.corner_speed = friction.corner_speed;
    switch (friction.law) {
        case FrictionLaw::double_exponential:
            contact.kind = kernel::Contact::Kind::double_exponential;
            break;
        case FrictionLaw::hyperbola:
            contact.kind = kernel::Contact::Kind::hyperbola;
            break;
        case FrictionLaw::coulomb:
            contact.kind = kernel::Contact::Kind::coulomb;
            break;
        case FrictionLaw::thermal:
            contact.kind = kernel::Contact::Kind::thermal;
            break;
    }
    if (friction.law == FrictionLaw::double_exponential) contact.static_coefficient = steady_sliding_fit(0.0);
    if (friction.law != FrictionLaw::thermal) return contact;
    contact.heat = heat_path(friction.thermal);
    add_table(contact);
    return contact;
}

}  // namespace sim
