// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace sim::score {

/// The tunes that come with the program, sorted by name: presets/tunes.
std::vector<std::filesystem::path> shipped_tunes();

/// What read_tune is to be given: the file of a shipped tune for its short name ("bass_study"), unless a file of that
/// name stands here; anything else as it is.
std::string tune_place(const std::string& name_or_line);

}  // namespace sim::score
