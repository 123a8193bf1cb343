// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"

#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <variant>

namespace sim::report {

/// From … to, in the unit of the setting's key.
struct Span {
    double from = 0.0;
    double to = 0.0;

    bool operator==(const Span&) const = default;
};

/// What a setting may be: a number, two, or a word.
using SettingValue = std::variant<double, Span, std::string>;

/// Settings by key, units in the keys: "wander_mm".
using Settings = std::map<std::string, SettingValue>;

/// What was asked, so that it can be asked again: it stands as "run" in every JSON.
struct RunRecord {
    std::string version;  ///< of the program
    std::string command;  ///< "window"
    Preset preset;        ///< as it was read, before the settings
    Settings settings;    ///< every one in force, in full precision

    bool operator==(const RunRecord&) const = default;
};

/// The settings that a preset's own values stand for: the player's keys, "law", "reference_pitch_hz", "temperament".
/// Each number reads back as the very same SI value.
Settings settings_of(const Preset& preset);

/// The preset with one of those settings changed.  `where` names it in the InputError for a value that the preset
/// would not take either.
Preset with_setting(const Preset& preset, const std::string& key, const SettingValue& value, const std::string& where);

/// Reads "run" from a JSON file that a command wrote, or from a lesson's page.  InputError if the file has none, or
/// another command's.
RunRecord read_run(const std::filesystem::path& file, std::string_view command);

/// FNV-1a of the text, 64 bits, as 16 hexadecimal digits.
std::string text_hash(std::string_view text);
/// The same of a file's bytes, read block by block; InputError if it can't be read.
std::string file_hash(const std::filesystem::path& file);

}  // namespace sim::report
