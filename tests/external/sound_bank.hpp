// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"

#include <filesystem>
#include <string>
#include <vector>

/// Recorded single notes out of a bank in the SF2 format (version 2.04), as Debian's fluid-soundfont-gm installs one.
namespace tests {

struct BankNote {
    std::string instrument;
    std::string name;        ///< of the sample, without the side
    int key = 0;             ///< MIDI key at which it sounds untransposed
    double stated_hz = 0.0;  ///< its pitch by root key and tuning of the instrument's zone, A4 = 440 Hz
    analysis::Signal sound;  ///< mean of the stereo mates
};

/// The samples of a melodic preset of bank 0, each once, rising in key.  Empty if the file is not there.
///
/// Root key and tuning are those of the zone's generators (58, 51, 52); what the sample's own header says counts only
/// where a zone says nothing.  Stereo mates are paired by their names, which end in (L) and (R).
std::vector<BankNote> bank_notes(const std::filesystem::path& file, int program);

inline constexpr const char* installed_bank = "/usr/share/sounds/sf2/FluidR3_GM.sf2";

}  // namespace tests
