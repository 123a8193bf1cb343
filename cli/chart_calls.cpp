// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"

#include "analysis/units.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"
#include "sim/text.hpp"

#include <algorithm>

namespace cli {
namespace {

using analysis::mm_from_metres;
namespace charts = gui::charts;

charts::CellMotion cell_motion(sim::Motion motion) {
    switch (motion) {
        case sim::Motion::helmholtz:
            return charts::CellMotion::helmholtz;
        case sim::Motion::multiple_slip:
            return charts::CellMotion::multiple_slip;
        case sim::Motion::raucous:
            return charts::CellMotion::raucous;
        case sim::Motion::anomalous_low:
            return charts::CellMotion::anomalous_low;
        case sim::Motion::s_motion:
            return charts::CellMotion::s_motion;
        case sim::Motion::silent:
            break;
    }
    return charts::CellMotion::silent;
}

std::vector<charts::WindowCell> cells_of(const sim::Window& window) {
    std::vector<charts::WindowCell> cells;
    for (std::size_t i = 0; i < window.map.strokes.size(); ++i) {
        const sim::StrokeResult& result = window.map.strokes[i];
        cells.push_back({.contact_mm = mm_from_metres(result.stroke.contact_point),
                         .force_newtons = result.stroke.force,
                         .motion = cell_motion(result.verdict.motion),
                         .speaks = is_speaking(window.faults[i]),
                         .keeps_tone = window.faults[i] == sim::Fault::none});
    }
    return cells;
}

charts::BandStrip strip_of(const sim::Band& band) {
    return {.near_mm = mm_from_metres(band.near),
            .far_mm = mm_from_metres(band.far),
            .near_bound = std::string(fault_name(band.near_bound)),
            .far_bound = std::string(fault_name(band.far_bound))};
}

std::vector<charts::LimitCurve> limit_curves(const sim::Window& window) {
    charts::LimitCurve greatest{"greatest force, closed form", {}};
    charts::LimitCurve least{"least force from the bridge's admittance, closed form", {}};
    for (const sim::WindowPoint& point : window.points) {
        const double place = mm_from_metres(point.security.contact_point);
        greatest.points.push_back({place, point.limits.schelleng_max});
        if (point.limits.admittance_min) least.points.push_back({place, *point.limits.admittance_min});
    }
    std::vector<charts::LimitCurve> curves{greatest};
    if (!least.points.empty()) curves.push_back(least);
    return curves;
}

/// Level goes as bow speed over contact point: lines are where the best place's level has sunk so far.
std::vector<charts::LevelLossLine> level_lines(const sim::BandResult& band) {
    std::vector<charts::LevelLossLine> lines;
    if (!band.best) return lines;
    for (const double db : {3.0, 6.0, 9.0, 12.0})
        lines.push_back({db, mm_from_metres(*band.best * analysis::ratio_from_db(db))});
    return lines;
}

charts::ClimbChartStop chart_stop(const sim::ClimbStop& stop, double reference_pitch) {
    const sim::BandResult& band = stop.band;
    charts::ClimbChartStop shown{.stop_semitones = stop.note.stop};
    shown.note_name = sim::pitch_name(fundamental(stop.note.string), reference_pitch);
    if (band.best) {
        shown.best_mm = mm_from_metres(*band.best);
        shown.best_ratio = *band.best / stop.note.string.length;
    }
    if (band.band) shown.band = charts::ClimbBand{mm_from_metres(band.band->near), mm_from_metres(band.band->far)};
    if (band.stretch)
        shown.stretch = charts::ClimbBand{mm_from_metres(band.stretch->near), mm_from_metres(band.stretch->far)};
    shown.security_follows = band.at_best.security;
    shown.security_left_behind = stop.left_behind.security.security;
    shown.reason = band.reason;
    return shown;
}

std::optional<charts::Interval> interval_of(const sim::ForceWindow& window) {
    if (!window.main) return std::nullopt;
    return charts::Interval{window.intervals[*window.main].low, window.intervals[*window.main].high};
}

}  // namespace

void require_chart_place(const std::string&, const std::filesystem::path& place) {
    charts::require_chart_ending(place);
}

void draw_window_chart(const analysis::OutputFile& file, const sim::report::Asked& asked, const sim::Window& window) {
    charts::WindowChart chart;
    chart.title = sim::report::note_heading(asked);
    chart.subtitle = sim::report::player_line(asked.player) + "; end: " + std::string(stop_end_name(asked.note.end)) +
                     "; rosin: " + std::string(friction_law_name(asked.note.friction.law)) +
                     "; level lost against the best place";
    chart.cells = cells_of(window);
    chart.limits = limit_curves(window);
    chart.level_loss = level_lines(window.band);
    if (window.band.band) chart.band = strip_of(*window.band.band);
    if (window.band.stretch) chart.stretch = strip_of(*window.band.stretch);
    for (const sim::Band& band : window.band.other_bands) chart.other_bands.push_back(strip_of(band));
    if (window.band.best) chart.best_mm = mm_from_metres(*window.band.best);
    chart.player_force = charts::ForceRange{asked.player.force_low, asked.player.force_high};
    chart.floor_mm = mm_from_metres(asked.note.floor);
    chart.reason = window.band.reason;
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

void draw_climb_chart(const analysis::OutputFile& file, const sim::report::AskedClimb& asked, const sim::Climb& climb) {
    charts::ClimbChart chart;
    const sim::String& string = climb.stops.front().note.string;
    chart.title = asked.run.preset.name + ", string " + string.name + ": where the bow must go as the stop climbs";
    chart.subtitle = sim::report::player_line(climb.player);
    chart.band_share = climb.player.band_share;
    chart.left_behind_mm = mm_from_metres(climb.stops.front().left_behind.contact_point);
    for (const sim::ClimbStop& stop : climb.stops) chart.stops.push_back(chart_stop(stop, asked.reference_pitch));
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

void draw_laws_chart(const analysis::OutputFile& file, const sim::report::AskedLaws& asked,
                     const std::vector<sim::LawWindow>& windows) {
    charts::IntervalChart chart;
    chart.title =
        asked.run.preset.name + ", string " + windows.front().note.string.name + ": forces under each law of rosin";
    chart.subtitle = sim::report::player_line(asked.player);
    chart.x_title = "stop, semitones above the open string (laws side by side)";
    chart.y_title = "bow force, N";
    chart.thin_name = "forces that hold the motion";
    chart.thick_name = "forces that speak from rest";
    for (const sim::LawWindow& window : windows) {
        auto series = std::ranges::find(chart.series, window.law, &charts::IntervalSeries::name);
        if (series == chart.series.end()) series = chart.series.insert(series, {window.law, {}});
        series->pairs.push_back({window.note.stop, interval_of(window.held), interval_of(window.started)});
        if (window.law == windows.front().law)
            chart.notes.push_back("stop " + sim::short_number(window.note.stop) + ": bow at " +
                                  sim::fixed_number(mm_from_metres(window.contact_point), 0) + " mm");
    }
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

void draw_skew_chart(const analysis::OutputFile& file, const sim::report::AskedSkew& asked,
                     const std::vector<sim::SkewResult>& results) {
    charts::SweepChart chart;
    chart.title =
        asked.run.preset.name + ", string " + results.front().note.string.name + ": a bow that is not parallel";
    chart.subtitle = sim::report::player_line(asked.player) + "; strokes of " +
                     sim::fixed_number(mm_from_metres(asked.stroke_length), 0) + " mm";
    chart.x.title = "skew, degrees from the parallel";
    chart.y.title = "security, % of strokes";
    for (const sim::SkewResult& result : results) {
        const std::string stop = "stop " + sim::short_number(result.note.stop);
        charts::SweepSeries drifting{stop + ", drifting", {}};
        charts::SweepSeries sliding{stop + ", sliding", {}};
        for (const sim::SkewRow& row : result.rows) {
            const double degrees = analysis::degrees_from_radians(row.angle);
            drifting.points.push_back({degrees, 100.0 * row.drifting.security});
            sliding.points.push_back({degrees, 100.0 * row.sliding.security});
        }
        chart.series.push_back(drifting);
        chart.series.push_back(sliding);
    }
    chart.notes = {"drifting: the contact wanders along the string",
                   "sliding: the place is kept, the hair slides lengthwise"};
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

}  // namespace cli
