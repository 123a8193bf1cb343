// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/text.hpp"

#include "analysis/units.hpp"

#include <array>
#include <charconv>

namespace sim {

std::string short_number(double value) {
    std::array<char, 64> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::general, 4);
    return {buffer.data(), end.ptr};
}

std::string fixed_number(double value, int decimals) {
    std::array<char, 400> buffer{};
    const auto end =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
    std::string text(buffer.data(), end.ptr);
    const bool is_zero = text.find_first_not_of("-0.") == std::string::npos;
    if (is_zero && text.front() == '-') text.erase(0, 1);
    return text;
}

std::string mm_words(double metres) { return fixed_number(analysis::mm_from_metres(metres), 0) + " mm"; }

std::string percent_words(double share) { return fixed_number(100.0 * share, 0) + " %"; }

}  // namespace sim
