// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/bridge_fit.hpp"
#include "sim/preset.hpp"

#include <filesystem>
#include <string>

namespace sim {

/// The preset with the fitted modes as its bridge, under another name; the sources say what they were fitted to.
Preset with_bridge(const Preset& preset, const std::string& name, const BridgeFit& fit, const std::string& measurement);

/// Puts the modes fitted to the file that `measured_bridge` names, seen from `folder`, in its place: from then on the
/// preset, its text and every run record hold the modes and need that file no more.  `where` names the preset in
/// errors.
void fit_measured_bridge(Preset& preset, const std::filesystem::path& folder, const std::string& where);

/// A measurement by its path, or by its name beside the shipped presets.  InputError where there is none.
std::filesystem::path find_measurement(const std::string& name_or_path);

}  // namespace sim
