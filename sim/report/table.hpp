// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace sim::report {

/// Aligned columns under two lines of heading (what, and its unit).
class Table {
public:
    struct Column {
        std::string name;
        std::string unit;    ///< may be empty
        bool words = false;  ///< set to the left; numbers stand to the right
    };

    explicit Table(std::vector<Column> columns);

    /// As many cells as columns.
    void add_row(std::vector<std::string> cells);
    std::string text() const;

private:
    std::vector<Column> columns_;
    std::vector<std::vector<std::string>> rows_;
};

/// "name: value" lines, the values below one another.
std::string value_lines(const std::vector<std::pair<std::string, std::string>>& lines);

// Cells: "-" for what has no value.
std::string fixed_cell(const std::optional<double>& value, int decimals);
std::string mm_cell(const std::optional<double>& metres, int decimals);
std::string newtons_cell(const std::optional<double>& newtons);
std::string percent_cell(double share);

}  // namespace sim::report
