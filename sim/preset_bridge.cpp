// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset_bridge.hpp"

#include "analysis/errors.hpp"
#include "sim/preset_reader.hpp"

#include <nlohmann/json.hpp>

namespace sim {
namespace {

namespace fs = std::filesystem;

const std::string measured_pointer = "/bridge/measured";

/// A file's name in one line of proper UTF-8, so that it can stand in a preset.
std::string shown(const std::string& name) {
    using nlohmann::json;
    return json::parse(json(one_line(name)).dump(-1, ' ', false, json::error_handler_t::replace)).get<std::string>();
}

std::string source_of(const std::string& measurement) {
    return "measured, modes fitted to " + shown(measurement) + "; radiation weights set to 1";
}

}  // namespace

Preset with_bridge(const Preset& preset, const std::string& name, const BridgeFit& fit,
                   const std::string& measurement) {
    Preset changed = preset;
    changed.name = shown(name);
    changed.remark = "started from " + preset.name + "; bridge fitted to " + shown(measurement);
    changed.bridge = bridge_of(fit);
    changed.measured_bridge.clear();
    std::erase_if(changed.sources,
                  [](const auto& source) { return source.first == "/bridge" || source.first.starts_with("/bridge/"); });
    changed.sources["/bridge"] = source_of(measurement);
    return changed;
}

void fit_measured_bridge(Preset& preset, const fs::path& folder, const std::string& where) {
    const std::string place = where + " " + measured_pointer;
    const fs::path file = folder / preset.measured_bridge;
    std::error_code ignored;
    if (!fs::exists(file, ignored)) {
        throw analysis::InputError(place, "no such file as \"" + preset.measured_bridge +
                                              "\" seen from the preset's folder; give a measured admittance (.csv or "
                                              ".wav)");
    }
    preset.bridge = bridge_of(fit_bridge(read_measured_bridge(file), {}, place + " " + one_line(file.string())));
    // the text holds modes from now on; what was said of the file is said of them
    if (const auto said = preset.sources.find(measured_pointer); said != preset.sources.end()) {
        preset.sources.try_emplace("/bridge", said->second);
        preset.sources.erase(measured_pointer);
    }
    preset.sources.try_emplace("/bridge", source_of(fs::path(preset.measured_bridge).filename().string()));
    preset.measured_bridge.clear();
}

fs::path find_measurement(const std::string& name_or_path) {
    std::error_code ignored;
    if (fs::exists(name_or_path, ignored)) return name_or_path;
    const std::vector<fs::path> shipped = shipped_presets();
    if (!shipped.empty() && fs::path(name_or_path).parent_path().empty()) {
        fs::path beside = shipped.front().parent_path() / name_or_path;
        if (!name_or_path.empty() && fs::exists(beside, ignored)) return beside;
    }
    throw analysis::InputError(one_line(name_or_path),
                               "there is no such file; give a measured admittance (.csv or .wav)");
}

}  // namespace sim
