// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/run_record.hpp"

#include "analysis/errors.hpp"
#include "sim/preset_reader.hpp"
#include "sim/report/run_part.hpp"

#include <array>
#include <cmath>
#include <cstdint>
#include <fstream>
#include <iterator>
#include <utility>
#include <vector>

namespace sim::report {
namespace {

constexpr std::array<const char*, 10> player_keys{
    "force_newtons",         "speed_m_s", "rise_ms",       "wander_mm",
    "pitch_tolerance_cents", "speak_ms",  "speak_periods", "tone_level_db",
    "tone_brightness_ratio", "band_share"};

/// Whole numbers without ".0", as people write them.
Json number_json(double value) {
    if (value == std::floor(value) && std::abs(value) < 1e15) return static_cast<std::int64_t>(value);
    return value;
}

Json value_json(const SettingValue& value) {
    if (const auto* number = std::get_if<double>(&value)) return number_json(*number);
    if (const auto* span = std::get_if<Span>(&value))
        return Json::array({number_json(span->from), number_json(span->to)});
    return std::get<std::string>(value);
}

template <class AnyJson>
SettingValue value_of(const AnyJson& json) {
    if (json.is_array()) return Span{json.at(0).template get<double>(), json.at(1).template get<double>()};
    if (json.is_number()) return json.template get<double>();
    return json.template get<std::string>();
}

bool is_value(const nlohmann::json& json) {
    if (json.is_array()) return json.size() == 2 && json[0].is_number() && json[1].is_number();
    return json.is_number() || json.is_string();
}

Preset with_law(Preset preset, const SettingValue& value, const std::string& where) {
    const auto* name = std::get_if<std::string>(&value);
    const std::optional<FrictionLaw> law = name != nullptr ? friction_law_from_name(*name) : std::nullopt;
    if (!law) {
        throw analysis::InputError(where, "must be one of thermal, double_exponential, hyperbola, coulomb" +
                                              (name != nullptr ? ", is \"" + one_line(*name) + "\"" : std::string()));
    }
    preset.friction.law = *law;  // coefficients that the preset does not give keep their usual values
    return preset;
}

std::string whole_text(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::error_code ignored;
    if (!in.is_open() || std::filesystem::is_directory(file, ignored)) {
        throw analysis::InputError(one_line(file.string()), "can't be read; give a JSON file that a command wrote");
    }
    return {std::istreambuf_iterator<char>(in), {}};
}

/// A lesson's page carries its run in a <script>; other files are JSON as they stand.
std::string json_of(std::string text) {
    constexpr std::string_view page_start = "<!DOCTYPE html";
    constexpr std::string_view run_start = R"(<script type="application/json" id="run">)";
    if (!text.starts_with(page_start)) return text;
    const std::size_t start = text.find(run_start);
    if (start == std::string::npos) return "{}";
    const std::size_t from = start + run_start.size();
    return text.substr(from, text.find("</script>", from) - from);
}

constexpr std::uint64_t hash_start = 0xcbf29ce484222325U;

std::uint64_t hashed(std::string_view bytes, std::uint64_t hash) {
    for (const char c : bytes) {
        hash ^= static_cast<unsigned char>(c);
        hash *= 0x100000001b3U;
    }
    return hash;
}

std::string hash_digits(std::uint64_t hash) {
    std::string digits(16, '0');
    for (std::size_t i = 0; i < digits.size(); ++i) digits[i] = "0123456789abcdef"[(hash >> (60 - 4 * i)) & 15U];
    return digits;
}

}  // namespace

std::string text_hash(std::string_view text) { return hash_digits(hashed(text, hash_start)); }

std::string file_hash(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    if (!in) throw analysis::InputError(one_line(file.string()), "can't be opened for reading");
    std::uint64_t hash = hash_start;
    std::vector<char> block(1 << 16);
    while (in.read(block.data(), static_cast<std::streamsize>(block.size())) || in.gcount() > 0)
        hash = hashed({block.data(), static_cast<std::size_t>(in.gcount())}, hash);
    return hash_digits(hash);
}

Settings settings_of(const Preset& preset) {
    const Json document = Json::parse(preset_text(preset));
    Settings settings;
    for (const char* key : player_keys) settings[key] = value_of(document.at("player").at(key));
    settings["reference_pitch_hz"] = value_of(document.at("reference_pitch_hz"));
    settings["temperament"] = value_of(document.at("temperament"));
    settings["law"] = std::string(friction_law_name(preset.friction.law));
    return settings;
}

Preset with_setting(const Preset& preset, const std::string& key, const SettingValue& value, const std::string& where) {
    if (key == "law") return with_law(preset, value, where);
    Preset reader = preset;
    reader.friction = {};  // a law set beside the preset's may lack coefficients that a file must give
    Json document = Json::parse(preset_text(reader));
    Json& holder = document.at("player").contains(key) ? document.at("player") : document;
    holder.at(key) = value_json(value);
    Preset changed = parse_preset(document.dump(), where);
    changed.friction = preset.friction;
    changed.short_name = preset.short_name;
    changed.file = preset.file;
    return changed;
}

Json run_part(const RunRecord& run) {
    const std::string preset = preset_text(run.preset);
    Json settings = Json::object();
    for (const auto& [key, value] : run.settings) settings[key] = value_json(value);
    Json part;
    part["program"] = "bowband";
    part["version"] = run.version;
    part["command"] = run.command;
    part["preset_name"] = run.preset.name;
    part["preset_short_name"] = run.preset.short_name;
    part["preset_hash"] = "fnv1a64:" + text_hash(preset);
    part["settings"] = settings;
    part["preset"] = Json::parse(preset);
    return part;
}

Json file_run_part(const FileRun& run, Json settings) {
    Json part;
    part["program"] = "bowband";
    part["version"] = run.version;
    part["command"] = run.command;
    part["file"] = run.file;
    part["file_hash"] = "fnv1a64:" + run.file_hash;
    part["settings"] = std::move(settings);
    return part;
}

RunRecord read_run(const std::filesystem::path& file, std::string_view command) {
    const std::string where = one_line(file.string());
    const nlohmann::json document = parsed_json(json_of(whole_text(file)), where);
    const PresetNode root(document, where, "");
    if (!root.has("run")) root.fail("holds no \"run\"; give a JSON file written by bowband " + std::string(command));
    const PresetNode run = root.child("run");
    RunRecord record;
    record.command = run.text("command");
    if (record.command != command) {
        run.fail_at("command", "is a run of \"" + one_line(record.command) + "\"; repeat it with bowband " +
                                   one_line(record.command) + ", or give a file written by bowband " +
                                   std::string(command));
    }
    record.version = run.text("version");
    record.preset = parse_preset(run.child("preset").json().dump(), where + " /run/preset");
    if (!record.preset.measured_bridge.empty())
        run.fail_at("preset", "names a file for its bridge; a run record holds the modes themselves");
    record.preset.short_name = run.child("preset_short_name").text_or_empty();
    const PresetNode settings = run.child("settings");
    for (const std::string& key : settings.keys()) {
        const PresetNode value = settings.child(key);
        if (!is_value(value.json())) value.fail("must be a number, a list of two, or a word");
        record.settings[key] = value_of(value.json());
    }
    return record;
}

}  // namespace sim::report
