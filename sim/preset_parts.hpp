// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"
#include "sim/preset_reader.hpp"

namespace sim {

/// What a file may leave out.
inline constexpr double usual_finger_q = 100.0;

// Thermal contacts are written per newton in uJ/K, mW/K and mW s/(K m).
constexpr double joules_from_microjoules(double uj) { return uj * 1e-6; }
constexpr double microjoules_from_joules(double joules) { return joules * 1e6; }
constexpr double watts_from_milliwatts(double mw) { return mw * 1e-3; }
constexpr double milliwatts_from_watts(double watts) { return watts * 1e3; }

// The parts of a preset, each from its own JSON value.  All throw analysis::InputError.
PresetString string_from(const PresetNode& node);
Player player_from(const PresetNode& node);
Friction friction_from(const PresetNode& node);
/// Fills `bridge`, or `measured_bridge` where the file names one.
void read_bridge(const PresetNode& node, Preset& preset);

/// Checks what no part can see alone: names, tensions, and that every physical value has a source.
void check_preset(const PresetNode& root, const Preset& preset);

}  // namespace sim
