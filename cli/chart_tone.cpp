// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"

#include "analysis/units.hpp"
#include "gui/charts/answers.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"
#include "sim/report/tone_values.hpp"

namespace cli {
namespace {

using analysis::mm_from_metres;
namespace charts = gui::charts;

charts::BandStrip strip_of(const sim::Band& band) {
    return {.near_mm = mm_from_metres(band.near),
            .far_mm = mm_from_metres(band.far),
            .near_bound = std::string(fault_name(band.near_bound)),
            .far_bound = std::string(fault_name(band.far_bound))};
}

charts::ToneCell tone_cell(const sim::StrokeResult& result, sim::Fault fault, const sim::Note& note) {
    return {.contact_mm = mm_from_metres(result.stroke.contact_point),
            .force_newtons = result.stroke.force,
            .speaks = is_speaking(fault),
            .pitch_cents = sim::report::pitch_cents(result, note),
            .brightness_f0 = sim::report::brightness_f0(result),
            .level_db = sim::report::level_db(result),
            .clarity_db = result.tone.clarity};
}

}  // namespace

void draw_tone_map_chart(const analysis::OutputFile& file, const sim::report::Asked& asked, const sim::Window& window) {
    charts::ToneMapChart chart;
    chart.title = sim::report::note_heading(asked);
    chart.subtitle = "tone over the window; " + sim::report::player_line(asked.player) +
                     "; rosin: " + std::string(friction_law_name(asked.note.friction.law));
    for (std::size_t i = 0; i < window.map.strokes.size(); ++i)
        chart.cells.push_back(tone_cell(window.map.strokes[i], window.faults[i], asked.note));
    if (window.band.band) chart.band = strip_of(*window.band.band);
    if (window.band.stretch) chart.stretch = strip_of(*window.band.stretch);
    if (window.band.best) chart.best_mm = mm_from_metres(*window.band.best);
    chart.player_force = charts::ForceRange{asked.player.force_low, asked.player.force_high};
    chart.reason = window.band.reason;
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

void draw_climb_tone_chart(const analysis::OutputFile& file, const sim::report::AskedClimb& asked,
                           const sim::Climb& climb) {
    const charts::ChartSession session;
    charts::fill_chart(file, charts::climb_tone_chart(asked, climb));
}

}  // namespace cli
