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

/// A contact between rosined hair and string that warms as it slips.
///
/// The hair touches in many small round spots of one radius.  In each lies a layer of rosin, warm all through, that
/// takes the heat of friction.  String and rosined hair are half-spaces on either side of it: heat runs into both as it
/// does from a small sphere, k (sqrt(s/alpha) + 4/(pi a)) per area at first as the root of time, in the end spreading
/// all round (4 k a a spot).  The string's side stays under the spot.  The hair's side, and its half of the layer, is
/// renewed as the hair slips through, at a rate of slip speed / (pi a / 2): the area swept by a round spot
/// [Danckwerts1951]. The coefficient is a function of the layer's temperature alone, such that steady sliding gives the
/// published fit.
///
/// The real area of contact is force / contact pressure, so more force means more spots, each as warm as before: the
/// coefficient then does not depend on force.  With area_grows_with_force off it stays as it is at 1 N: lighter strokes
/// are cooler and grip more, firmer ones are warmer.
/// source   the two-sided conduction with fresh rosin carried in: [Woodhouse2003], form; renewal by [Danckwerts1951];
/// all
///          six numbers from memory, orders of magnitude (see DEVELOPERS.md); their weight is shown by `sensitivity`
struct ThermalContact {
    double layer = 10e-6;            ///< m, of rosin
    double spot_radius = 16e-6;      ///< m, a
    double density = 1010.0;         ///< kg/m^3, of rosin
    double specific_heat = 1800.0;   ///< J/(kg K)
    double conductivity = 0.2;       ///< W/(m K), k, of rosin, hair and string alike
    double contact_pressure = 26e6;  ///< Pa, scales temperatures only while the area grows with the force
    bool area_grows_with_force = true;

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
