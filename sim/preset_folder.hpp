// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

namespace sim {

/// Where the shipped presets stand; InputError where BOWBAND_PRESETS_DIR names no folder.
std::filesystem::path presets_folder();

}  // namespace sim
