// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/options_run.hpp"

#include <string>

namespace cli {

/// A finite number, whole text, point as the decimal sign.  InputError naming `where`, what was given, what would do.
double number_from(const std::string& text, const std::string& where);

/// The text of an option as a setting.  Pitch names of a stop stay words until the string is known.
sim::report::SettingValue setting_from(const std::string& text, const SettingOption& option);

/// The numbers of a list such as "0.1,0.4".
std::vector<double> numbers_from(const std::string& text, const std::string& where);
/// The list of numbers as text that gives the very same numbers back.
std::string list_text(const std::vector<double>& numbers);

/// The words of a --stop as semitones on this string: "D5", "5:D5"; a list "0,12,A5" as the text of one.
sim::report::SettingValue stops_from_words(const std::string& words, const sim::Preset& preset,
                                           const sim::PresetString& string);

}  // namespace cli
