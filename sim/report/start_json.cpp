// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/start_report.hpp"

namespace sim::report {
namespace {

/// A pace as it stands in files: its key, and its number in the key's unit.
struct PaceFile {
    std::string key;
    double unit;
};
PaceFile pace_file(const StartMap& map) {
    if (map.plan.start.kind == StartKind::from_rest) return {"acceleration_m_s2", 1.0};
    return {"force_rise_ms", analysis::ms_from_seconds(1.0)};
}

double period_of(const StartMap& map) { return 1.0 / fundamental(map.note.string); }

Json acceptance_part(const Acceptance& acceptance, double period) {
    return {{"ms", rounded(analysis::ms_from_seconds(acceptance.time))},
            {"periods", rounded(acceptance.periods)},
            {"within_ms", rounded(analysis::ms_from_seconds(accepted_time(acceptance, period)))}};
}

Json cell_part(const StartMap& map, const StartCell& cell) {
    const PaceFile pace = pace_file(map);
    Json part;
    part[pace.key] = rounded(cell.point.pace * pace.unit);
    part["force_newtons"] = rounded(cell.point.force);
    part["motion"] = motion_name(cell.run.motion);
    part["first_slip_ms"] = rounded_ms(cell.run.first_slip);
    part["transient_ms"] = rounded_ms(cell.run.transient);
    part["transient_periods"] = cell.run.transient ? rounded(*cell.run.transient / period_of(map)) : Json(nullptr);
    part["first_gap_periods"] = rounded(cell.run.first_gap);
    part["strict"] = start_outcome_name(cell.run.strict);
    part["lenient"] = start_outcome_name(cell.run.lenient);
    part["runs"] = cell.runs;
    part["votes"] = {{"strict", rounded(cell.share(StartLimit::strict))},
                     {"lenient", rounded(cell.share(StartLimit::lenient))}};
    return part;
}

Json cells_part(const StartMap& map) {
    Json part = Json::array();
    for (const StartCell& cell : map.cells) part.push_back(cell_part(map, cell));
    return part;
}

/// What the ends of an interval are called.
struct EndKeys {
    std::string low;
    std::string high;
    double unit;
};

Json interval_part(const StartInterval& interval, const EndKeys& keys) {
    return {{keys.low, rounded(interval.low * keys.unit)},
            {keys.high, rounded(interval.high * keys.unit)},
            {"low_open", interval.low_open},
            {"high_open", interval.high_open},
            {"cells", interval.cells}};
}

/// The main interval or null, and the others.
void add_intervals(Json& part, const StartIntervals& intervals, const EndKeys& keys) {
    part["main"] = intervals.main ? interval_part(*intervals.chosen(), keys) : Json(nullptr);
    part["others"] = Json::array();
    for (std::size_t i = 0; i < intervals.all.size(); ++i)
        if (i != intervals.main) part["others"].push_back(interval_part(intervals.all[i], keys));
}

Json slope_part(const std::optional<EdgeSlope>& slope) {
    if (!slope) return nullptr;
    return {{"power", rounded(slope->power)}, {"columns", slope->columns}};
}

Json wedge_part(const StartMap& map, const Wedge& wedge) {
    const PaceFile pace = pace_file(map);
    Json part;
    part["low_edge"] = slope_part(wedge.low_edge);
    part["high_edge"] = slope_part(wedge.high_edge);
    part["clean_cells"] = wedge.clean_cells;
    part["unsure_cells"] = wedge.unsure_cells;
    Json row{{"force_newtons", rounded(wedge.middle_force)}};
    row["best_" + pace.key] = wedge.best_pace ? rounded(*wedge.best_pace * pace.unit) : Json(nullptr);
    add_intervals(row, wedge.middle_paces, {"min_" + pace.key, "max_" + pace.key, pace.unit});
    part["middle_force"] = row;
    part["columns"] = Json::array();
    for (const WedgeColumn& column : wedge.columns) {
        Json entry{{pace.key, rounded(column.pace * pace.unit)}};
        add_intervals(entry, column.forces, {"force_min_newtons", "force_max_newtons", 1.0});
        part["columns"].push_back(entry);
    }
    part["in_words"] = wedge_in_words(map, wedge);
    return part;
}

}  // namespace

std::string start_json(const Asked& asked, const StartAnswer& answer) {
    const StartMap& map = answer.map;
    const StartCase& start = map.plan.start;
    Json document;
    document["run"] = run_part(asked.run);
    document["note"] = note_part(asked.note, asked.reference_pitch);
    add_place(document["note"], start.contact_point, asked.note);
    document["beginning"] = start_kind_name(start.kind);
    document["acceptance"] = {{"strict", acceptance_part(start.strict, period_of(map))},
                              {"lenient", acceptance_part(start.lenient, period_of(map))}};
    document["map"] = cells_part(map);
    document["wedge"] = {{"strict", wedge_part(map, answer.strict)}, {"lenient", wedge_part(map, answer.lenient)}};
    return json_text(document);
}

std::string start_csv(const Asked&, const StartAnswer& answer) {
    const std::string pace = pace_file(answer.map).key;
    return csv_text(cells_part(answer.map),
                    {pace, "force_newtons", "motion", "first_slip_ms", "transient_ms", "transient_periods",
                     "first_gap_periods", "strict", "lenient", "runs", "votes/strict", "votes/lenient"});
}

}  // namespace sim::report
