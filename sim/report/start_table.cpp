// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/report/start_report.hpp"
#include "sim/report/table.hpp"
#include "sim/text.hpp"

#include <algorithm>

namespace sim::report {
namespace {

bool from_rest(const StartMap& map) { return map.plan.start.kind == StartKind::from_rest; }

std::string forces_cell(const StartIntervals& forces) {
    const StartInterval* main = forces.chosen();
    if (main == nullptr) return "-";
    return (main->low_open ? "under " : "") + newtons_cell(main->low) + " to " + (main->high_open ? "over " : "") +
           newtons_cell(main->high) + (forces.all.size() > 1 ? " *" : "");
}

/// Cells of one pace whose runs did not vote alike under either limit.
int unsure_in(const StartMap& map, std::size_t pace) {
    int count = 0;
    for (std::size_t j = 0; j < map.forces.size(); ++j) {
        const StartCell& cell = map.at(pace, j);
        count += cell.unsure(StartLimit::strict) || cell.unsure(StartLimit::lenient) ? 1 : 0;
    }
    return count;
}

std::vector<std::string> row_of(const StartAnswer& answer, std::size_t pace) {
    const StartMap& map = answer.map;
    const double value = map.paces[pace];
    std::vector<std::string> row{short_number(from_rest(map) ? value : analysis::ms_from_seconds(value))};
    if (from_rest(map)) row.push_back(fixed_number(map.plan.start.speed / value, 3));
    row.push_back(forces_cell(answer.strict.columns[pace].forces));
    row.push_back(forces_cell(answer.lenient.columns[pace].forces));
    row.push_back(std::to_string(unsure_in(map, pace)));
    return row;
}

bool any_split(const Wedge& wedge) {
    return std::ranges::any_of(wedge.columns, [](const WedgeColumn& column) { return column.forces.all.size() > 1; });
}

std::string within_words(const StartMap& map, const Acceptance& limit) {
    const double period = 1.0 / fundamental(map.note.string);
    return fixed_number(analysis::ms_from_seconds(accepted_time(limit, period)), 0) + " ms";
}

std::string edge_words(const std::optional<EdgeSlope>& low, const std::optional<EdgeSlope>& high) {
    const auto power = [](const std::optional<EdgeSlope>& edge) {
        return edge ? fixed_number(edge->power, 2) : std::string("-");
    };
    return power(low) + " and " + power(high);
}

}  // namespace

std::string start_line(const StartMap& map) {
    const StartCase& start = map.plan.start;
    const std::string place = "bow " + short_number(analysis::mm_from_metres(start.contact_point)) +
                              " mm from the bridge (1/" +
                              fixed_number(map.note.string.length / start.contact_point, 1) + " of the string), ";
    if (from_rest(map)) return place + "from rest, gathering speed evenly up to " + short_number(start.speed) + " m/s";
    return place + "moving at " + short_number(start.speed) + " m/s while its force rises evenly";
}

std::string limit_words(const StartMap& map, StartLimit limit) {
    const StartCase& start = map.plan.start;
    return "settled within " + within_words(map, limit == StartLimit::strict ? start.strict : start.lenient) +
           " of the first slip (" + std::string(start_limit_name(limit)) + ")";
}

std::string start_table(const Asked& asked, const StartAnswer& answer) {
    const StartMap& map = answer.map;
    std::vector<Table::Column> columns{from_rest(map) ? Table::Column{"gathers", "m/s a second"}
                                                      : Table::Column{"force rises", "in, ms"}};
    if (from_rest(map)) columns.push_back({short_number(map.plan.start.speed) + " m/s", "after, s"});
    columns.push_back({"clean from first slip", "in " + within_words(map, map.plan.start.strict) + ", N", true});
    columns.push_back({"clean from first slip", "in " + within_words(map, map.plan.start.lenient) + ", N", true});
    columns.push_back({"unsure", "of " + std::to_string(map.forces.size())});
    Table table(columns);
    for (std::size_t i = 0; i < map.paces.size(); ++i) table.add_row(row_of(answer, i));
    std::string text = note_heading(asked) + "\n" + start_line(map) + "\n\n" + table.text();
    if (any_split(answer.strict) || any_split(answer.lenient))
        text += "* not one interval: in between are forces that do not begin cleanly (all in the JSON)\n";
    const std::string what = from_rest(map) ? "acceleration" : "time of rise";
    text += "force at the lower and upper edge goes as " + what + " to the power of (strict) " +
            edge_words(answer.strict.low_edge, answer.strict.high_edge) + ", (lenient) " +
            edge_words(answer.lenient.low_edge, answer.lenient.high_edge) + "\n";
    return text;
}

std::string start_in_words(const StartAnswer& answer) {
    const int unsure = std::max(answer.strict.unsure_cells, answer.lenient.unsure_cells);
    return wedge_in_words(answer.map, answer.strict) + "\n" + wedge_in_words(answer.map, answer.lenient) + "\n" +
           std::to_string(unsure) + " of " + std::to_string(answer.map.cells.size()) +
           " beginnings hang on a hair: with force or pace 1 % off they end otherwise.";
}

}  // namespace sim::report
