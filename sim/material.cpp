// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/material.hpp"

#include "analysis/errors.hpp"

#include <array>
#include <string>

namespace sim {
namespace {

// An overspun string has its core's density and moduli here; what the winding changes, its gauge must give.
// Moduli of gut and of plastics differ by half from string to string.  How much the losses matter is shown where they
// are used; no published table was at hand for any of these values.
// clang-format off: a row a material
constexpr std::array<Material, 7> table = {{
    {.name = "gut",
     .density = 1300,
     .youngs_modulus = 5.5e9,
     .shear_modulus = 1.5e9,
     .friction_loss = 1.5e-3,
     .air_loss = 1.0,
     .bending_loss = 0.03,
     .torsion_q = 20,
     .overspun = false,
     .source = "from memory"},
    {.name = "overspun gut",
     .density = 1300,
     .youngs_modulus = 5.5e9,
     .shear_modulus = 1.5e9,
     .friction_loss = 1.5e-3,
     .air_loss = 1.0,
     .bending_loss = 0.03,
     .torsion_q = 20,
     .overspun = true,
     .source = "from memory"},
    {.name = "nylon",
     .density = 1150,
     .youngs_modulus = 4.0e9,
     .shear_modulus = 1.0e9,
     .friction_loss = 1.0e-3,
     .air_loss = 1.0,
     .bending_loss = 0.03,
     .torsion_q = 34,
     .overspun = false,
     .source = "from memory"},
    {.name = "overspun nylon",
     .density = 1150,
     .youngs_modulus = 4.0e9,
     .shear_modulus = 1.0e9,
     .friction_loss = 1.0e-3,
     .air_loss = 1.0,
     .bending_loss = 0.03,
     .torsion_q = 34,
     .overspun = true,
     .source = "from memory"},
    {.name = "fluorocarbon",
     .density = 1780,
     .youngs_modulus = 4.0e9,
     .shear_modulus = 1.0e9,
     .friction_loss = 1.0e-3,
     .air_loss = 1.0,
     .bending_loss = 0.03,
     .torsion_q = 34,
     .overspun = false,
     .source = "from memory"},
    {.name = "steel",
     .density = 7850,
     .youngs_modulus = 205e9,
     .shear_modulus = 80e9,
     .friction_loss = 3.0e-4,
     .air_loss = 1.0,
     .bending_loss = 2.0e-3,
     .torsion_q = 45,
     .overspun = false,
     .source = "from memory"},
    {.name = "overspun steel",
     .density = 7850,
     .youngs_modulus = 205e9,
     .shear_modulus = 80e9,
     .friction_loss = 3.0e-4,
     .air_loss = 1.0,
     .bending_loss = 2.0e-3,
     .torsion_q = 45,
     .overspun = true,
     .source = "from memory"},
}};
// clang-format on

}  // namespace

std::span<const Material> materials() { return table; }

const Material& material(std::string_view name, std::string_view where) {
    std::string names;
    for (const Material& known : table) {
        if (known.name == name) {
            return known;
        }
        names += (names.empty() ? "" : ", ") + std::string(known.name);
    }
    throw analysis::InputError(std::string(where),
                               "material must be one of " + names + ", is \"" + std::string(name) + "\"");
}

}  // namespace sim
