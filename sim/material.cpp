// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/material.hpp"

#include "analysis/errors.hpp"

#include <array>
#include <string>

namespace sim {
namespace {

// An overspun string has its core's density and moduli here; what the winding changes, its gauge must give.
// Moduli of gut (3 to 7 GPa, falling with twist) and of plastics (nylon 2 to 6 GPa) differ by half from string to
// string and more; a string's own stiffness may be given in its gauge.  Gut's modulus does not change with its pull
// ([LynchAird2018], seen).  Density of gut: the rule "diameter in mm is the root of the mass in g/m" means 1273, common
// tables say 1300.  No published table was at hand for the losses: their form is [Woodhouse2004], their values
// remembered.
// clang-format off: a row a material
constexpr std::string_view remembered = "from memory";
constexpr std::string_view losses = "from memory; form [Woodhouse2004]";
constexpr std::string_view torsion = "[Woodhouse1999], from memory";
constexpr std::string_view as_core = "from memory, of the core";
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
     .density_source = remembered,
     .moduli_source = remembered,
     .losses_source = losses,
     .torsion_q_source = torsion},
    {.name = "overspun gut",
     .density = 1300,
     .youngs_modulus = 5.5e9,
     .shear_modulus = 1.5e9,
     .friction_loss = 1.5e-3,
     .air_loss = 1.0,
     .bending_loss = 0.03,
     .torsion_q = 20,
     .overspun = true,
     .density_source = as_core,
     .moduli_source = as_core,
     .losses_source = losses,
     .torsion_q_source = torsion},
    {.name = "nylon",
     .density = 1150,
     .youngs_modulus = 4.0e9,
     .shear_modulus = 1.0e9,
     .friction_loss = 1.0e-3,
     .air_loss = 1.0,
     .bending_loss = 0.03,
     .torsion_q = 34,
     .overspun = false,
     .density_source = remembered,
     .moduli_source = remembered,
     .losses_source = losses,
     .torsion_q_source = torsion},
    {.name = "overspun nylon",
     .density = 1150,
     .youngs_modulus = 4.0e9,
     .shear_modulus = 1.0e9,
     .friction_loss = 1.0e-3,
     .air_loss = 1.0,
     .bending_loss = 0.03,
     .torsion_q = 34,
     .overspun = true,
     .density_source = as_core,
     .moduli_source = as_core,
     .losses_source = losses,
     .torsion_q_source = torsion},
    {.name = "fluorocarbon",
     .density = 1780,
     .youngs_modulus = 4.0e9,
     .shear_modulus = 1.0e9,
     .friction_loss = 1.0e-3,
     .air_loss = 1.0,
     .bending_loss = 0.03,
     .torsion_q = 34,
     .overspun = false,
     .density_source = remembered,
     .moduli_source = remembered,
     .losses_source = losses,
     .torsion_q_source = torsion},
    {.name = "steel",
     .density = 7850,
     .youngs_modulus = 205e9,
     .shear_modulus = 80e9,
     .friction_loss = 3.0e-4,
     .air_loss = 1.0,
     .bending_loss = 2.0e-3,
     .torsion_q = 45,
     .overspun = false,
     .density_source = remembered,
     .moduli_source = remembered,
     .losses_source = losses,
     .torsion_q_source = torsion},
    {.name = "overspun steel",
     .density = 7850,
     .youngs_modulus = 205e9,
     .shear_modulus = 80e9,
     .friction_loss = 3.0e-4,
     .air_loss = 1.0,
     .bending_loss = 2.0e-3,
     .torsion_q = 45,
     .overspun = true,
     .density_source = as_core,
     .moduli_source = as_core,
     .losses_source = losses,
     .torsion_q_source = torsion},
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
