// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/sensitivity_report.hpp"
#include "sim/report/table.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

#include <algorithm>

namespace sim::report {
namespace {

/// "+12", "-3", "-" where there is nothing to compare.
std::string shift_cell(const std::optional<double>& share) {
    if (!share) return "-";
    const std::string text = fixed_number(100.0 * *share, 0);
    if (text == "0" || text == "-0") return "0";
    return (text.front() == '-' ? "" : "+") + text;
}

std::string edges_cell(const BandResult& band) {
    if (band.band) return mm_cell(band.band->near, 0) + " to " + mm_cell(band.band->far, 0);
    if (band.stretch) return mm_cell(band.stretch->near, 0) + " to " + mm_cell(band.stretch->far, 0) + " *";
    return "none";
}

std::string stop_name(double stop) { return stop == 0.0 ? "open" : "stop " + short_number(stop); }

/// The rule under every change: each stop's best place and the verdict.
std::string rule_table(const Sensitivity& all) {
    std::vector<Table::Column> columns{{"change", "", true}};
    for (const SensitivityNote& note : all.rows.front().notes) columns.push_back({stop_name(note.stop), "best mm"});
    columns.insert(columns.end(),
                   {{"rank", "correl."}, {"top by", "lowest"}, {"follows", "length"}, {"rule", "", true}});
    Table table(columns);
    for (const SensitivityRow& row : all.rows) {
        std::vector<std::string> cells{row_name(row, all.plan.factor)};
        for (const SensitivityNote& note : row.notes) cells.push_back(mm_cell(note.band.best, 0));
        cells.push_back(fixed_number(row.rule.correlation, 2));
        cells.push_back(fixed_number(row.rule.ratio, 2));
        cells.push_back(fixed_number(row.rule.follows, 2));
        cells.emplace_back(rule_verdict_name(row.rule.verdict));
        table.add_row(cells);
    }
    return table.text();
}

/// All that moves at one note.
std::string note_table(const Sensitivity& all, std::size_t i) {
    Table table({{"change", "", true},
                 {"best", "mm"},
                 {"moves", "mm"},
                 {"moves", "%"},
                 {"band", "mm", true},
                 {"secure", "%"},
                 {"force min", "N"},
                 {"moves", "%"},
                 {"force max", "N"},
                 {"moves", "%"}});
    const SensitivityNote& nominal = all.rows.front().notes[i];
    for (const SensitivityRow& row : all.rows) {
        const SensitivityNote& note = row.notes[i];
        const std::optional<double>& best = note.band.best;
        const std::optional<double>& was = nominal.band.best;
        table.add_row({row_name(row, all.plan.factor), mm_cell(best, 1), best && was ? mm_cell(*best - *was, 1) : "-",
                       shift_cell(shift(best, was)), edges_cell(note.band), percent_cell(note.band.at_best.security),
                       newtons_cell(note.forces.low), shift_cell(shift(note.forces.low, nominal.forces.low)),
                       newtons_cell(note.forces.high), shift_cell(shift(note.forces.high, nominal.forces.high))});
    }
    return table.text();
}

std::string constants_table(const Sensitivity& all) {
    Table table({{"constant", "", true}, {"what it is", "", true}, {"nominal", "", true}, {"source", "", true}});
    for (const Constant* constant : all.plan.constants)
        table.add_row({std::string(constant->name), std::string(constant->what), nominal_text(*constant, all.subject),
                       constant_source(*constant, all.subject.preset)});
    return table.text();
}

}  // namespace

std::string grid_words(const MapGrid& grid) {
    return std::to_string(grid.contact_points) + " contact points x " + std::to_string(grid.player_forces) + " forces";
}

std::string row_name(const SensitivityRow& row, double factor) {
    const bool up = row.direction == Direction::up;
    switch (row.kind) {
        case RowKind::nominal:
            break;
        case RowKind::grid:
            return up ? "grid finer" : "grid coarser";
        case RowKind::constant:
            return std::string(row.constant->name) + (up ? " x " : " / ") + short_number(factor);
    }
    return "no change";
}

std::string sensitivity_heading(const AskedSensitivity& asked, const Sensitivity& all) {
    return asked.run.preset.name + ", string " + all.subject.open.name + ": what the best place rests on";
}

std::string sensitivity_table(const AskedSensitivity& asked, const Sensitivity& all) {
    std::string text =
        sensitivity_heading(asked, all) + "\n" + player_line(all.subject.preset.player) + "; " +
        grid_words(all.plan.grid) +
        ".\nThe grid rows change no constant but those numbers by the same factor, and find forces 2 % beside the " +
        "best place: what they move is noise.\n\n" + constants_table(all) + "\nThe rule under every change. " +
        rule_in_words() + "\n\n" + rule_table(all);
    for (std::size_t i = 0; i < all.shown.size(); ++i) {
        if (!all.shown[i]) continue;
        const SensitivityNote& note = all.rows.front().notes[i];
        const double hz = wave_speed(all.subject.open) / (2.0 * note.sounding_length);
        text += "\n" + stop_name(note.stop) + ", " + pitch_name(hz, asked.reference_pitch) +
                "; forces that speak, found at " + mm_cell(note.band.best, 0) + " mm throughout\n\n" +
                note_table(all, i);
    }
    text +=
        "* no band: the stretch round the best place that is nearly as good\n"
        "-  nothing plays there, or the edge lies past the forces tried\n";
    return text;
}

}  // namespace sim::report
