// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"

#include "analysis/units.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"

namespace cli {
namespace {

using analysis::mm_from_metres;
namespace charts = gui::charts;

charts::StartStep start_step(const sim::StartRun& run, const sim::StartMap& map) {
    const double strict = accepted_time(map.plan.start.strict, 1.0 / fundamental(map.note.string));
    if (run.strict == sim::StartOutcome::clean)
        return *run.transient <= 0.5 * strict ? charts::StartStep::quick : charts::StartStep::strict;
    if (run.lenient == sim::StartOutcome::clean) return charts::StartStep::lenient;
    switch (run.lenient) {
        case sim::StartOutcome::late:
            return charts::StartStep::late;
        case sim::StartOutcome::slipping:
            return charts::StartStep::slipping;
        case sim::StartOutcome::choked:
            return charts::StartStep::choked;
        case sim::StartOutcome::wrong_motion:
            return charts::StartStep::wrong_motion;
        case sim::StartOutcome::clean:
        case sim::StartOutcome::stuck:
            break;
    }
    return charts::StartStep::stuck;
}

charts::StartChartCell start_cell(const sim::StartCell& cell, const sim::StartMap& map) {
    using sim::StartLimit;
    return {.step = start_step(cell.run, map),
            .strict = cell.clean(StartLimit::strict),
            .lenient = cell.clean(StartLimit::lenient),
            .unsure = cell.unsure(StartLimit::strict) || cell.unsure(StartLimit::lenient)};
}

/// Paces, their unit, and the player's own.
void set_paces(charts::StartChart& chart, const sim::StartMap& map, const sim::Player& player) {
    const bool from_rest = map.plan.start.kind == sim::StartKind::from_rest;
    const double unit = from_rest ? 1.0 : analysis::ms_from_seconds(1.0);
    for (const double pace : map.paces) chart.paces.push_back(pace * unit);
    chart.pace_title = from_rest ? "acceleration of the bow, m/s²" : "time in which the force rises, ms";
    if (player.rise > 0.0) chart.player_pace = from_rest ? player.speed / player.rise : player.rise * unit;
    if (chart.best_pace) *chart.best_pace *= unit;
}

}  // namespace

void draw_start_chart(const analysis::OutputFile& file, const sim::report::Asked& asked,
                      const sim::StartAnswer& answer) {
    const sim::StartMap& map = answer.map;
    const double period = 1.0 / fundamental(map.note.string);
    charts::StartChart chart;
    chart.title = sim::report::note_heading(asked);
    chart.subtitle = sim::report::start_line(map) + "; end: " + std::string(stop_end_name(asked.note.end)) +
                     "; rosin: " + std::string(friction_law_name(asked.note.friction.law));
    chart.forces = map.forces;
    for (const sim::StartCell& cell : map.cells) chart.cells.push_back(start_cell(cell, map));
    chart.strict_ms = analysis::ms_from_seconds(accepted_time(map.plan.start.strict, period));
    chart.lenient_ms = analysis::ms_from_seconds(accepted_time(map.plan.start.lenient, period));
    chart.player_force = charts::ForceRange{asked.player.force_low, asked.player.force_high};
    const sim::Wedge& wedge = answer.strict.best_pace ? answer.strict : answer.lenient;
    chart.middle_force = wedge.middle_force;
    chart.best_pace = wedge.best_pace;
    set_paces(chart, map, asked.player);
    if (answer.lenient.clean_cells == 0) chart.warning = wedge_in_words(map, answer.lenient);
    chart.notes = {wedge_in_words(map, answer.strict), wedge_in_words(map, answer.lenient)};
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

}  // namespace cli
