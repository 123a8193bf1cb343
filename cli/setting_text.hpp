// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/options_run.hpp"

#include <string>

namespace cli {

/// A finite number, whole text, point as the decimal sign.  InputError naming `where`, what was given, what would do.
double number_from(const std::string& text, const std::string& where);

/// The text of an option as a setting.  Pitch names of a stop stay words until the string is known.
sim::report::SettingValue setting_from(const std::string& text, const SettingOption& option);

/// The words of a --stop as semitones on this string: "D5", "5:D5".
sim::report::SettingValue stops_from_words(const std::string& words, const sim::Preset& preset,
                                           const sim::PresetString& string);

}  // namespace cli
