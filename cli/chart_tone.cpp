// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"

#include "analysis/units.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/scale.hpp"
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

/// One of the four quantities of a tone against the stop, for both bows.
struct ToneQuantity {
    const char* title;
    std::optional<sim::Spread> sim::ToneSpread::*spread;
    double (*shown)(double);
};

charts::StackPoint tone_point(double stop, const std::optional<sim::ToneSpread>& spread, const ToneQuantity& what) {
    charts::StackPoint point{.x = stop, .y = {}, .low = {}, .high = {}};
    if (!spread || !((*spread).*what.spread)) return point;
    const sim::Spread& values = *((*spread).*what.spread);
    point.y = what.shown(values.middle);
    point.low = what.shown(values.low);
    point.high = what.shown(values.high);
    return point;
}

charts::StackPanel tone_panel(const sim::Climb& climb, const ToneQuantity& what) {
    charts::StackPanel panel{.title = {}, .y = {.title = what.title}, .lines = {{}, {}}};
    for (const sim::ClimbStop& stop : climb.stops) {
        const double x = stop.note.stop;
        panel.lines[0].push_back(tone_point(x, stop.follows ? stop.follows->spread : std::nullopt, what));
        panel.lines[1].push_back(tone_point(x, stop.left_behind.spread, what));
    }
    return panel;
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
    const auto as_it_is = [](double value) { return value; };
    const sim::ClimbStop& first = climb.stops.front();
    const double behind = mm_from_metres(first.left_behind.contact_point);
    charts::StackChart chart;
    chart.title = asked.run.preset.name + ", string " + first.note.string.name + ": the tone as the stop climbs";
    chart.subtitle = sim::report::player_line(climb.player);
    chart.x = {.title = "stop, semitones above the open string"};
    chart.least_x_step = 1.0;
    chart.names = {"bow follows: best contact point", "bow left behind at " + charts::number_text(behind) + " mm"};
    chart.panels = {tone_panel(climb, {"pitch, cents from the note", &sim::ToneSpread::pitch, as_it_is}),
                    tone_panel(climb, {"brightness, fundamentals", &sim::ToneSpread::brightness, as_it_is}),
                    tone_panel(climb, {"level, dB re 1 N", &sim::ToneSpread::level, analysis::db_from_ratio}),
                    tone_panel(climb, {"clarity of pitch, dB", &sim::ToneSpread::clarity, as_it_is})};
    chart.bar_name = "least to greatest over the player's forces";
    chart.missing_name = "no bow can stand there, or no pitch";
    chart.notes = {
        "Marks stand at the median over the player's forces. Strokes that do not speak are counted: they are "
        "heard.",
        "Clarity: what repeats with the note's period against all else; at 0 dB they are equally strong."};
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

}  // namespace cli
