// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"

#include <string>
#include <vector>

/// What instruments there are, as text, with what a careful maker would warn of.
namespace sim::report {

std::string presets_json(const std::vector<Preset>& presets);
/// A line for each string.
std::string presets_csv(const std::vector<Preset>& presets);
std::string presets_table(const std::vector<Preset>& presets);
/// What to mind before stringing an instrument like one of these: never empty.
std::string presets_cautions(const std::vector<Preset>& presets);

}  // namespace sim::report
