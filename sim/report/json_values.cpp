// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/json_values.hpp"

#include "analysis/units.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace sim::report {

Json rounded(double value) {
    constexpr int digits = 6;
    if (!std::isfinite(value)) return nullptr;
    std::array<char, 64> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::general, digits);
    double read = 0.0;
    std::from_chars(text.data(), end.ptr, read);
    return read == 0.0 ? 0.0 : read;  // never -0
}

Json rounded(const std::optional<double>& value) { return value ? rounded(*value) : Json(nullptr); }

Json rounded_mm(double metres) { return rounded(analysis::mm_from_metres(metres)); }

Json rounded_mm(const std::optional<double>& metres) { return metres ? rounded_mm(*metres) : Json(nullptr); }

Json rounded_ms(const std::optional<double>& seconds) {
    return seconds ? rounded(analysis::ms_from_seconds(*seconds)) : Json(nullptr);
}

std::string json_text(const Json& document) {
    return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace sim::report
