// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/number_table.hpp"

#include "analysis/errors.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <limits>
#include <optional>
#include <string_view>

namespace fs = std::filesystem;

namespace analysis {
namespace {

constexpr std::size_t most_bytes = 64'000'000;
constexpr double no_number = std::numeric_limits<double>::quiet_NaN();

std::string at_line(const fs::path& file, std::size_t line) { return file.string() + " line " + std::to_string(line); }

std::string text_of(const fs::path& file) {
    std::error_code ignored;
    if (!fs::exists(file, ignored)) throw InputError(file.string(), "there is no such file");
    if (fs::is_directory(file, ignored)) throw InputError(file.string(), "is a folder; a text file is needed");
    std::ifstream in(file, std::ios::binary);
    std::string text;
    std::vector<char> block(1 << 16);
    while (in && text.size() <= most_bytes) {
        in.read(block.data(), static_cast<std::streamsize>(block.size()));
        text.append(block.data(), static_cast<std::size_t>(in.gcount()));
    }
    if (!in.is_open() || in.bad()) throw InputError(file.string(), "can't be read");
    if (text.size() > most_bytes) throw InputError(file.string(), "is larger than 64 MB; thin the table out");
    if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
        throw InputError(file.string(), "is text in UTF-16; save it as plain text (UTF-8)");
    if (text.find('\0') != std::string::npos) throw InputError(file.string(), "is no text; a table (CSV) is needed");
    if (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);
    return text;
}

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blank = " \t\v\f\"'";
    const std::size_t first = text.find_first_not_of(blank);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

struct Line {
    std::string_view text;
    std::size_t number;
};

/// Lines that hold something, whatever ends them.
std::vector<Line> lines_of(std::string_view text) {
    std::vector<Line> lines;
    std::size_t number = 1;
    while (!text.empty()) {
        const std::size_t end = text.find_first_of("\r\n");
        const std::string_view line = text.substr(0, end);
        if (!trimmed(line).empty()) lines.push_back({line, number});
        if (end == std::string_view::npos) break;
        text.remove_prefix(end + (text.substr(end).starts_with("\r\n") ? 2 : 1));
        ++number;
    }
    return lines;
}

char separator_of(std::string_view names) {
    for (const char c : {';', '\t', ','})
        if (names.find(c) != std::string_view::npos) return c;
    return ' ';
}

std::vector<std::string_view> cells_of(std::string_view line, char separator) {
    std::vector<std::string_view> cells;
    if (separator == ' ') {
        for (std::size_t at = line.find_first_not_of(" \t"); at != std::string_view::npos;) {
            const std::size_t end = std::min(line.find_first_of(" \t", at), line.size());
            cells.push_back(trimmed(line.substr(at, end - at)));
            at = line.find_first_not_of(" \t", end);
        }
        return cells;
    }
    while (true) {
        const std::size_t end = line.find(separator);
        cells.push_back(trimmed(line.substr(0, end)));
        if (end == std::string_view::npos) return cells;
        line.remove_prefix(end + 1);
    }
}

/// "not a number" in one of its spellings reads as one, and is then refused as not finite.
std::optional<double> number_of(std::string_view cell, bool decimal_comma) {
    std::string text(cell);
    if (decimal_comma && text.find('.') == std::string::npos) std::ranges::replace(text, ',', '.');
    const char* start = text.data() + (text.starts_with('+') ? 1 : 0);
    const char* end = text.data() + text.size();
    double value = 0.0;
    const auto read = std::from_chars(start, end, value);
    if (read.ec != std::errc() || read.ptr != end) return std::nullopt;
    return value;
}

bool has_number(const std::vector<std::string_view>& cells, bool decimal_comma) {
    return std::ranges::any_of(cells, [&](auto cell) { return number_of(cell, decimal_comma).has_value(); });
}

std::string name_of(std::string_view cell) {
    std::string name;
    for (const char c : cell) {
        const auto byte = static_cast<unsigned char>(c);
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || byte >= 0x80;
        if (plain)
            name += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        else if (!name.empty() && name.back() != '_')
            name += '_';
    }
    while (name.ends_with('_')) name.pop_back();
    return name;
}

/// The line of names, and how many lines come before the rows.
struct Heading {
    Line names;
    std::size_t lines;
};

Heading heading_of(const std::vector<Line>& lines, const fs::path& file) {
    const auto is_comment = [](const Line& line) { return trimmed(line.text).starts_with('#'); };
    const auto first = std::ranges::find_if_not(lines, is_comment);
    if (first == lines.end()) throw InputError(file.string(), "holds no rows; a line of names and rows are needed");
    const auto count = static_cast<std::size_t>(first - lines.begin());
    const char separator = separator_of(first->text);
    if (!has_number(cells_of(first->text, separator), separator != ',')) return {*first, count + 1};
    if (count > 0) {
        Line names = lines[count - 1];
        names.text = names.text.substr(names.text.find_first_not_of("# \t\"'", names.text.find('#')));
        return {names, count};
    }
    throw InputError(at_line(file, first->number), "must name the columns, such as hz,real,imag; holds numbers");
}

}  // namespace

NumberTable read_number_table(const fs::path& file) {
    const std::string text = text_of(file);
    const std::vector<Line> lines = lines_of(text);
    const Heading heading = heading_of(lines, file);
    const char separator = separator_of(heading.names.text);
    NumberTable table;
    for (const std::string_view cell : cells_of(heading.names.text, separator)) table.names.push_back(name_of(cell));
    while (table.names.size() > 1 && table.names.back().empty()) table.names.pop_back();  // a separator at the end
    table.columns.resize(table.names.size());
    for (std::size_t i = heading.lines; i < lines.size(); ++i) {
        if (trimmed(lines[i].text).starts_with('#')) continue;
        std::vector<std::string_view> cells = cells_of(lines[i].text.substr(0, lines[i].text.find('#')), separator);
        while (cells.size() > table.names.size() && cells.back().empty()) cells.pop_back();
        if (i == heading.lines && !has_number(cells, separator != ',')) {
            for (const std::string_view cell : cells) table.units.push_back(name_of(cell));
            continue;
        }
        if (cells.size() != table.names.size()) {
            throw InputError(at_line(file, lines[i].number), "has " + std::to_string(cells.size()) +
                                                                 " cells; the line of names has " +
                                                                 std::to_string(table.names.size()));
        }
        for (std::size_t c = 0; c < cells.size(); ++c)
            table.columns[c].push_back(number_of(cells[c], separator != ',').value_or(no_number));
        table.lines.push_back(lines[i].number);
    }
    if (table.lines.empty()) throw InputError(file.string(), "holds no rows; a line for each frequency is needed");
    return table;
}

double require_number(const NumberTable& table, std::size_t column, std::size_t row, const std::string& where) {
    const double value = table.columns[column][row];
    if (std::isfinite(value)) return value;
    throw InputError(where + " line " + std::to_string(table.lines[row]),
                     "\"" + table.names[column] + "\" must be a finite number with a decimal point, such as 0.25");
}

}  // namespace analysis
