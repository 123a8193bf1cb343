// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/table.hpp"

#include "analysis/units.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cassert>

namespace sim::report {
namespace {

constexpr std::size_t between = 2;  // columns

/// Characters, not bytes (UTF-8).
std::size_t width(const std::string& text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string padded(const std::string& text, std::size_t to, bool left) {
    const std::string space(to - std::min(to, width(text)), ' ');
    return left ? text + space : space + text;
}

void end_line(std::string& text) {
    text.erase(text.find_last_not_of(' ') + 1);
    text += "\n";
}

}  // namespace

Table::Table(std::vector<Column> columns) : columns_(std::move(columns)) {}

void Table::add_row(std::vector<std::string> cells) {
    assert(cells.size() == columns_.size());
    rows_.push_back(std::move(cells));
}

std::string Table::text() const {
    std::vector<std::vector<std::string>> lines(2);
    for (const Column& column : columns_) {
        lines[0].push_back(column.name);
        lines[1].push_back(column.unit);
    }
    lines.insert(lines.end(), rows_.begin(), rows_.end());
    std::vector<std::size_t> widths(columns_.size(), 0);
    for (const auto& line : lines)
        for (std::size_t i = 0; i < line.size(); ++i) widths[i] = std::max(widths[i], width(line[i]));
    std::string text;
    for (const auto& line : lines) {
        for (std::size_t i = 0; i < line.size(); ++i)
            text += (i > 0 ? std::string(between, ' ') : "") + padded(line[i], widths[i], columns_[i].words);
        end_line(text);
    }
    return text;
}

std::string value_lines(const std::vector<std::pair<std::string, std::string>>& lines) {
    std::size_t widest = 0;
    for (const auto& [name, value] : lines) widest = std::max(widest, width(name));
    std::string text;
    for (const auto& [name, value] : lines) {
        text += padded(name, widest, true) + "  " + value;
        end_line(text);
    }
    return text;
}

std::string fixed_cell(const std::optional<double>& value, int decimals) {
    return value ? fixed_number(*value, decimals) : "-";
}

std::string mm_cell(const std::optional<double>& metres, int decimals) {
    return metres ? fixed_number(analysis::mm_from_metres(*metres), decimals) : "-";
}

std::string newtons_cell(const std::optional<double>& newtons) {
    if (!newtons) return "-";
    return fixed_number(*newtons, *newtons < 1.0 ? 3 : 2);
}

std::string percent_cell(double share) { return fixed_number(100.0 * share, 0); }

}  // namespace sim::report
