// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/csv.hpp"

#include <algorithm>

namespace sim::report {
namespace {

std::string quoted(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string result = "\"";
    for (const char c : text) {
        if (c == '"') result += '"';
        result += c;
    }
    return result + "\"";
}

std::string cell(const Json& row, std::string_view column) {
    const Json* value = &row;
    while (!column.empty()) {
        const std::size_t slash = column.find('/');
        const std::string key(column.substr(0, slash));
        if (!value->is_object() || !value->contains(key)) return "";
        value = &value->at(key);
        column = slash == std::string_view::npos ? std::string_view() : column.substr(slash + 1);
    }
    if (value->is_null()) return "";
    return value->is_string() ? quoted(value->get<std::string>()) : value->dump();
}

}  // namespace

std::string csv_text(const Json& rows, const std::vector<std::string_view>& columns) {
    std::string text;
    for (const std::string_view column : columns) {
        std::string heading(column);
        std::ranges::replace(heading, '/', '_');
        text += (text.empty() ? "" : ",") + heading;
    }
    text += "\n";
    for (const Json& row : rows) {
        std::string line;
        bool first = true;
        for (const std::string_view column : columns) {
            line += (first ? "" : ",") + cell(row, column);
            first = false;
        }
        text += line + "\n";
    }
    return text;
}

}  // namespace sim::report
