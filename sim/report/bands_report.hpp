// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset_bands.hpp"

#include <optional>
#include <string>
#include <vector>

/// Where each string of an instrument is bowed, as text.
namespace sim::report {

/// Where players say that an instrument's open strings are bowed, m from the bridge.  Common practice, no source.
struct UsualPlaces {
    double near = 0.0;
    double far = 0.0;
};

/// The heading of a Markdown table, and its lines for one instrument.
std::string bands_heading();
std::string bands_lines(const PresetBands& bands, const std::optional<UsualPlaces>& usual_open);

/// A line for each note.
std::string bands_csv(const std::vector<PresetBands>& presets);
std::string bands_json(const std::vector<PresetBands>& presets);

}  // namespace sim::report
