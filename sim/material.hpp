// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string_view>

namespace sim {

/// What strings are made of.  Values stand in material.cpp, each with its source.  They hold for a dry room as it is:
/// temperature and humidity, which move gut's pitch and pull most, are left out.
struct Material {
    std::string_view name;  ///< as in presets: "gut", "overspun gut", "steel", …
    double density;         ///< kg/m^3
    double youngs_modulus;  ///< Pa
    double shear_modulus;   ///< Pa
    double friction_loss;   ///< eta_F
    double air_loss;        ///< eta_A, 1/s
    double bending_loss;    ///< eta_E
    double torsion_q;       ///< Q of torsional partials
    bool overspun;          ///< has a winding: mass, bending and torsion are its own and must be given
    // Where each value is from: a key of DEVELOPERS.md with how it was seen, or how it was come by.
    std::string_view density_source;
    std::string_view moduli_source;
    std::string_view losses_source;  ///< friction, air, bending
    std::string_view torsion_q_source;
};

std::span<const Material> materials();

/// The material named so; InputError listing all names otherwise.  `where` names the place in the error.
const Material& material(std::string_view name, std::string_view where);

}  // namespace sim
