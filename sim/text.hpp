// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace sim {

/// A number for people: at most four significant digits, no needless zeros, never the locale's comma.
std::string short_number(double value);
/// With exactly `decimals` digits after the point.
std::string fixed_number(double value, int decimals);
/// Whole millimetres: "40 mm"; and a share: "80 %".
std::string mm_words(double metres);
std::string percent_words(double share);

}  // namespace sim
