// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/law_report.hpp"

#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/table.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

#include <algorithm>

namespace sim::report {
namespace {

/// Under `name`: the interval that counts, how many there are, and the motions beyond.
Json window_part(const ForceWindow& window) {
    Json part;
    part["intervals"] = window.intervals.size();
    for (const char* key : {"min_newtons", "max_newtons", "below", "above"}) part[key] = nullptr;
    if (!window.main) return part;
    const ForceInterval& main = window.intervals[*window.main];
    part["min_newtons"] = rounded(main.low);
    part["max_newtons"] = rounded(main.high);
    if (main.below) part["below"] = motion_name(*main.below);
    if (main.above) part["above"] = motion_name(*main.above);
    return part;
}

Json rows_part(const AskedLaws& asked, const std::vector<LawWindow>& windows) {
    Json rows = Json::array();
    for (const LawWindow& window : windows) {
        Json row = note_part(window.note, asked.reference_pitch);
        row["law"] = window.law;
        add_place(row, window.contact_point, window.note);
        row["held"] = window_part(window.held);
        row["started"] = window_part(window.started);
        row["friction_drop"] = rounded(window.limits.friction_drop);
        row["schelleng_max_newtons"] = rounded(window.limits.schelleng_max);
        row["admittance_min_newtons"] = rounded(window.limits.admittance_min);
        rows.push_back(row);
    }
    return rows;
}

std::string interval_cell(const ForceWindow& window) {
    if (!window.main) return "none";
    const ForceInterval& main = window.intervals[*window.main];
    const std::string mark = window.intervals.size() > 1 ? " *" : "";
    return newtons_cell(main.low) + " to " + newtons_cell(main.high) + mark;
}

std::string motion_cell(const ForceWindow& window, std::optional<Motion> ForceInterval::*side) {
    if (!window.main) return "-";
    const std::optional<Motion> motion = window.intervals[*window.main].*side;
    if (!motion) return "-";
    std::string words(motion_name(*motion));
    for (char& c : words)
        if (c == '_') c = ' ';
    return words;
}

/// Over the notes that have a window under this law; "none" without.
std::string mean_span(const std::vector<LawWindow>& windows, const std::string& law, ForceWindow LawWindow::*which) {
    double sum = 0.0;
    int count = 0;
    for (const LawWindow& window : windows) {
        const ForceWindow& forces = window.*which;
        const std::optional<double> span = window.law == law ? forgiveness(forces) : std::nullopt;
        if (!span) continue;
        sum += *span;
        ++count;
    }
    return count > 0 ? fixed_number(sum / count, 0) : "none";
}

}  // namespace

std::string laws_json(const AskedLaws& asked, const std::vector<LawWindow>& windows) {
    Json document;
    document["run"] = run_part(asked.run);
    document["windows"] = rows_part(asked, windows);
    return json_text(document);
}

std::string laws_csv(const AskedLaws& asked, const std::vector<LawWindow>& windows) {
    return csv_text(rows_part(asked, windows),
                    {"stop_semitones", "pitch_name", "pitch_hz", "contact_mm", "contact_ratio", "law",
                     "held/min_newtons", "held/max_newtons", "held/intervals", "held/below", "held/above",
                     "started/min_newtons", "started/max_newtons", "started/intervals", "started/below",
                     "started/above", "friction_drop", "schelleng_max_newtons", "admittance_min_newtons"});
}

std::string laws_table(const AskedLaws& asked, const std::vector<LawWindow>& windows) {
    Table table({{"stop", ""},
                 {"note", "", true},
                 {"bow at", "mm"},
                 {"rosin", "law", true},
                 {"force that", "holds, N", true},
                 {"under it", "motion", true},
                 {"over it", "motion", true},
                 {"force that", "speaks, N", true},
                 {"closed form", "greatest, N"}});
    bool split = false;
    for (const LawWindow& window : windows) {
        split = split || window.held.intervals.size() > 1 || window.started.intervals.size() > 1;
        table.add_row({short_number(window.note.stop),
                       pitch_name(fundamental(window.note.string), asked.reference_pitch),
                       mm_cell(window.contact_point, 1), window.law, interval_cell(window.held),
                       motion_cell(window.held, &ForceInterval::below), motion_cell(window.held, &ForceInterval::above),
                       interval_cell(window.started), newtons_cell(window.limits.schelleng_max)});
    }
    std::string text = asked.run.preset.name + ", string " + windows.front().note.string.name + "; " +
                       player_line(asked.player) + "\n\n" + table.text();
    if (split) text += "* not one interval: the one that holds the middle force, else the widest\n";
    return text;
}

std::string laws_in_words(const std::vector<LawWindow>& windows) {
    std::vector<std::string> names;
    for (const LawWindow& window : windows)
        if (std::ranges::find(names, window.law) == names.end()) names.push_back(window.law);
    std::string words = "From least to greatest force that holds, and that speaks, dB on average:";
    for (const std::string& name : names)
        words += (&name == &names.front() ? " " : "; ") + name + " " + mean_span(windows, name, &LawWindow::held) +
                 " and " + mean_span(windows, name, &LawWindow::started);
    return words + ". The laws' constants are remembered, not measured: where they differ, trust none of them far.";
}

}  // namespace sim::report
