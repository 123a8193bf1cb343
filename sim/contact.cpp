// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/note.hpp"

#include <cmath>

namespace sim {

namespace {

constexpr double table_step = 0.05;      // K
constexpr double greatest_speed = 50.0;  // m/s, where the walk along steady sliding ends
constexpr double speed_factor = 1.0005;  // between one point of the walk and the next

double steady_temperature(const ThermalContact& contact, double speed) {
    return steady_sliding_fit(speed) * speed / (contact.conduction + contact.carried_off * speed);
}

/// mu over theta on an even grid, straight between the points of the walk.
std::vector<double> coefficient_table(const ThermalContact& contact) {
    std::vector<double> table{steady_sliding_fit(0.0)};
    double speed = 1e-5;
    double last_theta = 0.0;
    double last_mu = table.front();
    while (speed < greatest_speed) {
        const double theta = steady_temperature(contact, speed);
        const double mu = steady_sliding_fit(speed);
        for (double next = static_cast<double>(table.size()) * table_step; next <= theta;
             next = static_cast<double>(table.size()) * table_step)
            table.push_back(last_mu + (mu - last_mu) * (next - last_theta) / (theta - last_theta));
        last_theta = std::max(last_theta, theta);
        last_mu = mu;
        speed *= speed_factor;
    }
    table.push_back(last_mu);
    return table;
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
    contact.table = coefficient_table(friction.thermal);
    contact.table_step = table_step;
    contact.heat_capacity = friction.thermal.heat_capacity;
    contact.conduction = friction.thermal.conduction;
    contact.carried_off = friction.thermal.carried_off;
    return contact;
}

}  // namespace sim
