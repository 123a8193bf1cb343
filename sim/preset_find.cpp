// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset.hpp"

#include "analysis/errors.hpp"
#include "sim/preset_folder.hpp"
#include "sim/preset_reader.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <fstream>

namespace sim {
namespace {

namespace fs = std::filesystem;

bool is_folder(const fs::path& path) {
    std::error_code ignored;
    return fs::is_directory(path, ignored);
}

std::string lower_case(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

/// The name inside a preset file, empty where it can't be told.  Never throws: a broken neighbour must not
/// stand in the way of the preset that was asked for.
std::string full_name(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    const nlohmann::json document = nlohmann::json::parse(in, nullptr, false);
    const bool named = document.is_object() && document.contains("name") && document["name"].is_string();
    return named ? document["name"].get<std::string>() : "";
}

}  // namespace

fs::path presets_folder() {
    if (const char* named = std::getenv("BOWBAND_PRESETS_DIR"); named != nullptr && *named != '\0') {
        if (!is_folder(named)) {
            throw analysis::InputError("BOWBAND_PRESETS_DIR",
                                       std::string("must name a folder of presets, is \"") + one_line(named) + "\"");
        }
        return named;
    }
    std::error_code
        ignored;  // an installed program takes its own presets, one in a build tree those of the source tree
    const fs::path programs = fs::read_symlink("/proc/self/exe", ignored).parent_path();
    fs::path installed = programs.parent_path() / "share" / "bowband" / "presets";
#ifdef BOWBAND_PRESETS_DIR
    if (!is_folder(installed)) {
        return BOWBAND_PRESETS_DIR;
    }
#endif
    return installed;
}

std::vector<fs::path> shipped_presets() {
    const fs::path folder = presets_folder();
    std::vector<fs::path> files;
    std::error_code ignored;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder, ignored)) {
        if (entry.path().extension() == ".json" && entry.is_regular_file(ignored)) {
            files.push_back(entry.path());
        }
    }
    std::sort(files.begin(), files.end());
    return files;
}

Preset find_preset(const std::string& name_or_path) {
    std::error_code ignored;
    if (fs::exists(name_or_path, ignored) && !is_folder(name_or_path)) {
        return read_preset(name_or_path);
    }
    const std::vector<fs::path> files = shipped_presets();
    const std::string wanted = lower_case(name_or_path);
    std::vector<std::string> names;
    for (const fs::path& file : files) {
        names.push_back(file.stem().string());
        if (lower_case(names.back()) == wanted) {
            return read_preset(file);
        }
    }
    for (const fs::path& file : files) {
        if (!wanted.empty() && lower_case(full_name(file)) == wanted) {
            return read_preset(file);
        }
    }
    if (is_folder(name_or_path)) {
        return read_preset(name_or_path);  // says that it is a folder
    }
    const std::string nearest = nearest_name(wanted, names);
    throw analysis::InputError("preset \"" + one_line(name_or_path) + "\"",
                               "no such file or preset; " + (nearest.empty() ? "" : "did you mean " + nearest + "? ") +
                                   "Presets: " + (names.empty() ? "none found" : listed(names)));
}

const PresetString& preset_string(const Preset& preset, const std::string& name) {
    for (const PresetString& string : preset.strings) {
        if (string.name == name) {
            return string;
        }
    }
    std::vector<std::string> known;
    for (const PresetString& string : preset.strings) {
        if (string.pitch == name) {
            return string;
        }
        known.push_back(string.name + " (" + string.pitch + ")");
    }
    throw analysis::InputError("string \"" + one_line(name) + "\"",
                               preset.name + " has no such string; it has " + listed(known));
}

}  // namespace sim
