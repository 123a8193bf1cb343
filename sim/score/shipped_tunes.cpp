// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/shipped_tunes.hpp"

#include "sim/preset_folder.hpp"

#include <algorithm>

namespace sim::score {

namespace fs = std::filesystem;

std::vector<fs::path> shipped_tunes() {
    std::vector<fs::path> files;
    std::error_code ignored;
    for (const fs::directory_entry& entry : fs::directory_iterator(presets_folder() / "tunes", ignored))
        if (entry.path().extension() == ".musicxml") files.push_back(entry.path());
    std::ranges::sort(files);
    return files;
}

std::string tune_place(const std::string& name_or_line) {
    std::error_code ignored;
    if (fs::exists(name_or_line, ignored)) return name_or_line;
    for (const fs::path& file : shipped_tunes())
        if (file.stem() == name_or_line) return file.string();
    return name_or_line;
}

}  // namespace sim::score
