// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/json_values.hpp"
#include "sim/report/passage_report.hpp"

/// Only for the sources of this folder: the bow's part of a passage's texts.
namespace sim::report {

/// Adds to a note where and how it is bowed, and what the two simulated ways gave.
void add_bow(Json& part, const BowedPassage& bowed, std::size_t note);
/// Columns of those, for csv_text.
std::vector<std::string> bow_columns();
/// "left_behind" and "path" of the whole passage.
void add_bow_path(Json& document, const BowedPassage& bowed);

/// A line for each note.
std::string bow_table(const AskedPassage& asked, const BowedPassage& bowed);

}  // namespace sim::report
