// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace sim {

enum class FrictionLaw { thermal, double_exponential, hyperbola, coulomb };

/// The law's name as written in presets and options.
std::string_view friction_law_name(FrictionLaw law);
std::optional<FrictionLaw> friction_law_from_name(std::string_view name);

/// A lumped contact that warms as it slips, per newton of bow force:
/// C dtheta/dt = mu(theta) |u| - (G0 + g1 |u|) theta, theta above ambient.
///
/// Per newton means that the contact area grows with the force, so that theta does not depend on it.
/// source   values from memory, a start whose sensitivity is shown by the climb's tables
struct ThermalContact {
    double heat_capacity = 0.7e-6;  ///< C, J/K per N
    double conduction = 6e-4;       ///< G0, W/K per N
    double carried_off = 5e-3;      ///< g1, W/K per (m/s) per N: fresh rosin carried in

    bool operator==(const ThermalContact&) const = default;
};

/// How rosined hair grips and slides.
struct Friction {
    FrictionLaw law = FrictionLaw::thermal;
    double static_coefficient = 0.8;   ///< hyperbola, coulomb
    double sliding_coefficient = 0.3;  ///< hyperbola, coulomb
    double corner_speed = 0.2;         ///< m/s, hyperbola: mu = sliding + (static - sliding) v0/(v0 + u)
    ThermalContact thermal;

    bool operator==(const Friction&) const = default;
};

/// Published fit of steady sliding: 0.35 + 0.45 exp(-u/0.1) + 0.4 exp(-u/0.01), u >= 0 in m/s.
/// source   [Smith2000], seen second-hand
double steady_sliding_fit(double slip_speed);

/// Coefficient at sliding speed u >= 0 m/s in steady sliding, whatever the law.
double steady_coefficient(const Friction& friction, double slip_speed);

/// Greatest coefficient a cold, sticking contact bears.
double sticking_coefficient(const Friction& friction);

}  // namespace sim
