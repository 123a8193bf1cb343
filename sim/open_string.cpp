// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset.hpp"

#include "sim/material.hpp"

#include <cassert>
#include <cmath>
#include <numbers>

namespace sim {
namespace {

constexpr double pi = std::numbers::pi;

double mass_per_length(const Gauge& gauge, const Material& stuff) {
    assert(gauge.mass_per_length || gauge.diameter);
    if (gauge.mass_per_length) {
        return *gauge.mass_per_length;
    }
    return stuff.density * pi / 4.0 * *gauge.diameter * *gauge.diameter;
}

/// Of the string taken as round and solid.
double plain_diameter(const Gauge& gauge, const Material& stuff) {
    return gauge.diameter ? *gauge.diameter : std::sqrt(4.0 * *gauge.mass_per_length / (pi * stuff.density));
}

/// EI = E pi d^4 / 64 of a round rod, unless given.
double bending_stiffness(const Gauge& gauge, const Material& stuff) {
    if (gauge.bending_stiffness) {
        return *gauge.bending_stiffness;
    }
    const double diameter = gauge.bending_diameter ? *gauge.bending_diameter : plain_diameter(gauge, stuff);
    return stuff.youngs_modulus * pi * std::pow(diameter, 4) / 64.0;
}

/// Torsion of a plain round string: c_t = sqrt(G/rho), Zt = m c_t / 2 at its surface, unless given.
void add_torsion(String& string, const Gauge& gauge, const Material& stuff) {
    string.torsion_speed = gauge.torsion_ratio ? *gauge.torsion_ratio * wave_speed(string)
                                               : std::sqrt(stuff.shear_modulus / stuff.density);
    string.torsion_impedance =
        gauge.torsion_impedance ? *gauge.torsion_impedance : string.mass_per_length * string.torsion_speed / 2.0;
}

}  // namespace

String open_string(const Preset& preset, const PresetString& string) {
    const Material& stuff = material(string.gauge.material, "string \"" + string.name + "\"");
    const double frequency = pitch_frequency(string.pitch, preset.reference_pitch);
    String open;
    open.name = string.name;
    open.length = string.length;
    open.mass_per_length = mass_per_length(string.gauge, stuff);
    open.tension = open.mass_per_length * std::pow(2.0 * open.length * frequency, 2);
    if (string.stiffness) {
        open.bending_stiffness = bending_stiffness(string.gauge, stuff);
    }
    if (string.torsion) {
        add_torsion(open, string.gauge, stuff);
    }
    if (string.damping) {
        open.damping = {.friction = stuff.friction_loss,
                        .air = stuff.air_loss,
                        .bending = stuff.bending_loss,
                        .torsion_q = stuff.torsion_q};
    }
    return open;
}

double last_stop(const Preset& preset) {
    constexpr double rounding = 1e-9;  // a board that ends on a semitone counts it
    return std::floor(12.0 * std::log2(1.0 / (1.0 - preset.board_end_ratio)) + rounding);
}

double contact_floor(const Preset& preset) {
    constexpr double clear_of_the_bridge = 0.002;  // m, common practice
    return preset.hair_width / 2.0 + clear_of_the_bridge;
}

}  // namespace sim
