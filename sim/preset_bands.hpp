// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/security.hpp"

#include <vector>

namespace sim {

/// One note of an instrument's overview.
struct PresetBand {
    Note note;
    BandResult band;  ///< with the reason where there is no band
};

/// Every open string from the top one down, and the octave of the top string as the last.
struct PresetBands {
    Preset preset;
    std::vector<PresetBand> notes;
};

/// A coarse map of each of those notes.  The octave is left out where the board ends before it.
PresetBands find_preset_bands(const Preset& preset, const MapGrid& grid, const Workers& workers);

}  // namespace sim
