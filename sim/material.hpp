// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string_view>

namespace sim {

/// What strings are made of.  Values stand in material.cpp, each with its source.
struct Material {
    std::string_view name;    ///< as in presets: "gut", "overspun gut", "steel", …
    double density;           ///< kg/m^3
    double youngs_modulus;    ///< Pa
    double shear_modulus;     ///< Pa
    double friction_loss;     ///< eta_F
    double air_loss;          ///< eta_A, 1/s
    double bending_loss;      ///< eta_E
    double torsion_q;         ///< Q of torsional partials
    bool overspun;            ///< has a winding: mass and torsion must be given
    std::string_view source;  ///< key of DEVELOPERS.md or "from memory"
};

std::span<const Material> materials();

/// The material named so; InputError listing all names otherwise.  `where` names the place in the error.
const Material& material(std::string_view name, std::string_view where);

}  // namespace sim
