// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

namespace analysis {

/// Columns of numbers read from a text file.
struct NumberTable {
    std::vector<std::string> names;            ///< of the columns, in small letters, "_" for all but letters and digits
    std::vector<std::string> units;            ///< from a second line of words, spelt as the names; empty without one
    std::vector<std::vector<double>> columns;  ///< [column][row]; all of one length; NaN where the cell holds no number
    std::vector<std::size_t> lines;            ///< [row], of the file, from 1

    bool operator==(const NumberTable&) const = default;
};

/// Reads a table with one line of names, then a line for each row: "hz,real,imag".
///
/// Cells are parted by semicolons, tabs, commas or spaces, as the line of names has it; beside anything but commas
/// a decimal comma does.  Lines that begin with # are comments, but the last one before the numbers may hold the names.
/// A second line of words is taken for units.  A byte order mark, any line ends, quotes and empty lines do no harm.
///
/// InputError naming file and line for a file that is missing, larger than 64 MB, no text, has no names, no rows, or a
/// row with too few or too many cells.  Cells that hold no number are for `require_number` to complain about: a column
/// that nobody asks for may hold words.
NumberTable read_number_table(const std::filesystem::path& file);

/// The cell, or InputError naming file, line and column unless it is a finite number.
double require_number(const NumberTable& table, std::size_t column, std::size_t row, const std::string& where);

}  // namespace analysis
