// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/options_run.hpp"
#include "sim/gauges.hpp"

#include <initializer_list>

namespace cli {

/// What `gauges` asks beside the note and the player.
extern const std::initializer_list<SettingOption> gauge_options;

/// Everything that was asked of the strings.
struct GaugeQuestion {
    sim::Preset set_up;  ///< the preset as it was read
    sim::Preset now;     ///< with pitch and replaced strings
    bool whole_set = false;
    std::vector<sim::PresetString> candidates;  ///< of one string; empty for a whole set
    sim::GaugePlan plan;
};
/// Reads and checks it; defaults come into force in the question's settings.
GaugeQuestion gauges_asked(Question& question);

}  // namespace cli
