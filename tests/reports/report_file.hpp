// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

/// A table that a test writes as it runs: into the build's folder, or, with BOWBAND_KEEP_REPORTS set, over the copy
/// that is kept beside the tests.
inline void write_report(const std::string& name, const std::string& text) {
    const bool keep = std::getenv("BOWBAND_KEEP_REPORTS") != nullptr;
    const std::filesystem::path folder = keep ? BOWBAND_REPORTS_SOURCE : BOWBAND_REPORTS_BUILD;
    std::filesystem::create_directories(folder);
    std::ofstream(folder / name) << text;
}
