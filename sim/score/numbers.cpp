// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/numbers.hpp"

#include "sim/score/tune.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace sim::score {
namespace {

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n";
    const std::size_t first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

template <class Number>
std::optional<Number> whole_text(std::string_view text) {
    text = trimmed(text);
    if (text.starts_with('+')) text.remove_prefix(1);
    Number number{};
    const auto end = std::from_chars(text.data(), text.data() + text.size(), number);
    if (text.empty() || end.ec != std::errc{} || end.ptr != text.data() + text.size()) return std::nullopt;
    return number;
}

}  // namespace

std::optional<double> number_in(std::string_view text) {
    const auto number = whole_text<double>(text);
    return number && std::isfinite(*number) ? number : std::nullopt;
}

std::optional<int> whole_number_in(std::string_view text) { return whole_text<int>(text); }

std::optional<Spelling> spelling_in(std::string_view name) {
    if (name.size() < 2 || name.size() > 4 || name.front() < 'A' || name.front() > 'G') return std::nullopt;
    if (name.back() < '0' || name.back() > '9') return std::nullopt;
    const std::string_view signs = name.substr(1, name.size() - 2);
    const bool sharp = signs.find_first_not_of('#') == std::string_view::npos;
    const bool flat = signs.find_first_not_of('b') == std::string_view::npos;
    if (!sharp && !flat) return std::nullopt;
    const int count = static_cast<int>(signs.size());
    return Spelling{.step = name.front(), .alter = sharp ? count : -count, .octave = name.back() - '0'};
}

bool is_dynamic(std::string_view text) {
    constexpr std::array<std::string_view, 8> known{"ppp", "pp", "p", "mp", "mf", "f", "ff", "fff"};
    return std::ranges::find(known, text) != known.end();
}

}  // namespace sim::score
