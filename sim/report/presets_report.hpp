// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"

#include <string>
#include <vector>

/// What instruments there are, as text, with what a careful maker would warn of.
namespace sim::report {

/// How near a plain gut string is to breaking.
enum class BreakingRisk { none, near_limit, likely };

/// Pitch times length of the open string, Hz m.  Plain gut breaks at about 260 (240 to 280) whatever its diameter.
/// source   common practice of makers; from memory
double breaking_product(const PresetString& string, double reference_pitch);
/// Near the limit from 220, likely to break from 240; none for anything but plain gut.
BreakingRisk breaking_risk(const PresetString& string, double reference_pitch);

std::string presets_json(const std::vector<Preset>& presets);
/// A line for each string.
std::string presets_csv(const std::vector<Preset>& presets);
std::string presets_table(const std::vector<Preset>& presets);
/// What to mind before stringing an instrument like one of these: never empty.
std::string presets_cautions(const std::vector<Preset>& presets);

}  // namespace sim::report
