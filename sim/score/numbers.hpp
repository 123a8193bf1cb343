// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

/// Only for the sources of this folder: numbers as they stand in tunes, whatever the locale.
namespace sim::score {

/// The whole text as a finite number with a point, spaces round it allowed; nothing otherwise.
std::optional<double> number_in(std::string_view text);
/// The same for whole numbers.
std::optional<int> whole_number_in(std::string_view text);
/// "F#4": letter, # or b once or twice, octave 0 to 9.
struct Spelling;
std::optional<Spelling> spelling_in(std::string_view name);
/// Whether it is one of "ppp" … "fff".
bool is_dynamic(std::string_view text);

}  // namespace sim::score
