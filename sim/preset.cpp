// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "sim/preset_bridge.hpp"
#include "sim/preset_parts.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <fstream>
#include <utility>

namespace sim {
namespace {

constexpr std::size_t most_bytes = 4'000'000;  // far above any preset, far below what a device file could give
constexpr int most_frets = 24;
constexpr std::size_t most_strings = 32;

constexpr std::array<std::pair<Temperament, std::string_view>, 5> temperaments = {{
    {Temperament::equal, "equal"},
    {Temperament::quarter_comma, "quarter_comma"},
    {Temperament::fifth_comma, "fifth_comma"},
    {Temperament::sixth_comma, "sixth_comma"},
    {Temperament::rule_of_18, "rule_of_18"},
}};

std::string file_text(const std::filesystem::path& file) {
    const std::string where = one_line(file.string());
    std::error_code ignored;
    if (std::filesystem::is_directory(file, ignored)) {
        throw analysis::InputError(where, "is a folder; give a preset file (.json)");
    }
    if (!std::filesystem::exists(file, ignored)) {
        throw analysis::InputError(where, "no such file; give a preset file (.json)");
    }
    std::ifstream in(file, std::ios::binary);
    std::string text(most_bytes + 1, '\0');
    in.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (!in.is_open() || in.bad()) {
        throw analysis::InputError(where, "can't be read; give a preset file (.json) that you may read");
    }
    text.resize(static_cast<std::size_t>(in.gcount()));
    if (text.size() > most_bytes) {
        throw analysis::InputError(where, "is larger than 4 MB; give a preset file (.json)");
    }
    return text;
}

void check_format(const PresetNode& root) {
    if (!root.json().is_object()) {
        root.fail("must be a JSON object { \"format\": 1, … }");
    }
    const nlohmann::json& format = root.child("format").json();
    if (!format.is_number() || format != 1) {
        root.fail_at("format", "must be 1, the only format this program reads");
    }
}

Temperament temperament_at(const PresetNode& node) {
    const std::string name = node.text();
    const std::optional<Temperament> temperament = temperament_from_name(name);
    if (!temperament) {
        node.fail("must be one of equal, quarter_comma, fifth_comma, sixth_comma, rule_of_18, is \"" + name + "\"");
    }
    return *temperament;
}

std::vector<int> chromatic_frets_at(const PresetNode& node, int frets) {
    std::vector<int> chromatic;
    for (const PresetNode& item : node.items()) {
        if (frets == 0) {
            item.fail("names a fret of an instrument without frets; leave the list empty");
        }
        chromatic.push_back(item.integer(1, frets));
        if (std::count(chromatic.begin(), chromatic.end(), chromatic.back()) > 1) {
            item.fail("names fret " + std::to_string(chromatic.back()) + " twice; give each once");
        }
    }
    return chromatic;
}

std::vector<PresetString> strings_at(const PresetNode& node) {
    const std::vector<PresetNode> items = node.items();
    if (items.empty() || items.size() > most_strings) {
        node.fail("must list 1 to " + std::to_string(most_strings) + " strings, lists " + std::to_string(items.size()));
    }
    std::vector<PresetString> strings;
    for (const PresetNode& item : items) {
        strings.push_back(string_from(item));
    }
    return strings;
}

std::map<std::string, std::string> sources_at(const PresetNode& node) {
    std::map<std::string, std::string> sources;
    for (const std::string& pointer : node.keys()) {
        sources[pointer] = node.text(pointer);
    }
    return sources;
}

void read_top(const PresetNode& root, Preset& preset) {
    preset.name = root.text("name");
    preset.kind = root.text("kind");
    preset.remark = root.has("remark") ? root.child("remark").text_or_empty() : "";
    preset.reference_pitch = root.number("reference_pitch_hz", {300.0, 550.0, "Hz"});
    preset.temperament = root.has("temperament") ? temperament_at(root.child("temperament")) : Temperament::equal;
    preset.frets = root.child("frets").integer(0, most_frets);
    if (root.has("chromatic_frets")) {
        preset.chromatic_frets = chromatic_frets_at(root.child("chromatic_frets"), preset.frets);
    }
    preset.guide_fret = root.has("guide_fret") && root.child("guide_fret").boolean();
    preset.board_end_ratio = root.number("board_end_ratio", {0.3, 0.95, ""});
    preset.hair_width = analysis::metres_from_mm(root.number("hair_width_mm", {1.0, 30.0, "mm"}));
    preset.finger_q = root.optional_number("finger_q", {5.0, 5000.0, ""}).value_or(usual_finger_q);
}

}  // namespace

std::string_view temperament_name(Temperament temperament) {
    return std::find_if(temperaments.begin(), temperaments.end(),
                        [temperament](const auto& entry) { return entry.first == temperament; })
        ->second;
}

std::optional<Temperament> temperament_from_name(std::string_view name) {
    for (const auto& [temperament, known] : temperaments) {
        if (known == name) {
            return temperament;
        }
    }
    return std::nullopt;
}

Preset parse_preset(const std::string& text, const std::string& where) {
    const nlohmann::json document = parsed_json(text, where);
    const PresetNode root(document, where, "");
    check_format(root);
    root.only_keys({"format", "name", "kind", "remark", "reference_pitch_hz", "temperament", "chromatic_frets", "frets",
                    "guide_fret", "board_end_ratio", "hair_width_mm", "finger_q", "player", "strings", "bridge",
                    "friction", "bow", "sources"});
    Preset preset;
    read_top(root, preset);
    preset.player = player_from(root.child("player"));
    preset.strings = strings_at(root.child("strings"));
    read_bridge(root.child("bridge"), preset);
    preset.friction = friction_from(root.child("friction"));
    if (root.has("bow")) preset.bow = bow_from(root.child("bow"));
    preset.sources = sources_at(root.child("sources"));
    check_preset(root, preset);
    return preset;
}

Preset read_preset(const std::filesystem::path& file) {
    const std::string where = one_line(file.string());
    Preset preset = parse_preset(file_text(file), where);
    if (!preset.measured_bridge.empty()) {
        fit_measured_bridge(preset, file.parent_path(), where);
    }
    preset.short_name = file.stem().string();
    preset.file = file;
    return preset;
}

}  // namespace sim
