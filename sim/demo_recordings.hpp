// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

namespace sim {

/// The sound file of that name: a path as it stands, else one of the demonstration recordings that come with the
/// program, else the path again, for the reader to complain about.
std::filesystem::path find_recording(const std::string& name_or_path);

}  // namespace sim
