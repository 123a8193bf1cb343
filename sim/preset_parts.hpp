// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"
#include "sim/preset_reader.hpp"

namespace sim {

/// What a file may leave out.
inline constexpr double usual_finger_q = 100.0;

// A contact of rosin is written in um and MPa.
constexpr double metres_from_um(double um) { return um * 1e-6; }
constexpr double um_from_metres(double metres) { return metres * 1e6; }
constexpr double pascals_from_mpa(double mpa) { return mpa * 1e6; }
constexpr double kg_from_g(double g) { return g * 1e-3; }
constexpr double g_from_kg(double kg) { return kg * 1e3; }
constexpr double mpa_from_pascals(double pascals) { return pascals * 1e-6; }

// The lean of a bridge's motion is written in degrees from the bowing direction.
double slope_from_degrees(double degrees);
double degrees_from_slope(double slope);

// The parts of a preset, each from its own JSON value.  All throw analysis::InputError.
PresetString string_from(const PresetNode& node);
Player player_from(const PresetNode& node);
Friction friction_from(const PresetNode& node);
Bow bow_from(const PresetNode& node);
/// Fills `bridge`, or `measured_bridge` where the file names one.
void read_bridge(const PresetNode& node, Preset& preset);

/// Checks what no part can see alone: names, tensions, and that every physical value has a source.
void check_preset(const PresetNode& root, const Preset& preset);

}  // namespace sim
