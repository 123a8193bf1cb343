// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/answers.hpp"

#include "analysis/units.hpp"

namespace gui::charts {
namespace {

using analysis::mm_from_metres;

CellMotion cell_motion(sim::Motion motion) {
    switch (motion) {
        case sim::Motion::helmholtz:
            return CellMotion::helmholtz;
        case sim::Motion::multiple_slip:
            return CellMotion::multiple_slip;
        case sim::Motion::raucous:
            return CellMotion::raucous;
        case sim::Motion::anomalous_low:
            return CellMotion::anomalous_low;
        case sim::Motion::s_motion:
            return CellMotion::s_motion;
        case sim::Motion::silent:
            break;
    }
    return CellMotion::silent;
}

std::vector<WindowCell> cells_of(const sim::Window& window) {
    std::vector<WindowCell> cells;
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

BandStrip strip_of(const sim::Band& band) {
    return {.near_mm = mm_from_metres(band.near),
            .far_mm = mm_from_metres(band.far),
            .near_bound = std::string(fault_name(band.near_bound)),
            .far_bound = std::string(fault_name(band.far_bound))};
}

std::vector<LimitCurve> limit_curves(const sim::Window& window) {
    LimitCurve greatest{"greatest force, closed form", {}};
    LimitCurve least{"least force from the bridge's admittance, closed form", {}};
    for (const sim::WindowPoint& point : window.points) {
        const double place = mm_from_metres(point.security.contact_point);
        greatest.points.push_back({place, point.limits.schelleng_max});
        if (point.limits.admittance_min) least.points.push_back({place, *point.limits.admittance_min});
    }
    std::vector<LimitCurve> curves{greatest};
    if (!least.points.empty()) curves.push_back(least);
    return curves;
}

/// Level goes as bow speed over contact point: lines are where the best place's level has sunk so far.
std::vector<LevelLossLine> level_lines(const sim::BandResult& band) {
    std::vector<LevelLossLine> lines;
    if (!band.best) return lines;
    for (const double db : {3.0, 6.0, 9.0, 12.0})
        lines.push_back({db, mm_from_metres(*band.best * analysis::ratio_from_db(db))});
    return lines;
}

ClimbChartStop chart_stop(const sim::ClimbStop& stop, double reference_pitch) {
    const sim::BandResult& band = stop.band;
    ClimbChartStop shown{.stop_semitones = stop.note.stop};
    shown.note_name = sim::pitch_name(fundamental(stop.note.string), reference_pitch);
    if (band.best) {
        shown.best_mm = mm_from_metres(*band.best);
        shown.best_ratio = *band.best / stop.note.string.length;
    }
    if (band.band) shown.band = ClimbBand{mm_from_metres(band.band->near), mm_from_metres(band.band->far)};
    if (band.stretch) shown.stretch = ClimbBand{mm_from_metres(band.stretch->near), mm_from_metres(band.stretch->far)};
    shown.security_follows = band.at_best.security;
    shown.security_left_behind = stop.left_behind.security.security;
    shown.reason = band.reason;
    return shown;
}

}  // namespace

WindowChart window_chart(const sim::report::Asked& asked, const sim::Window& window) {
    WindowChart chart;
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
    chart.player_force = ForceRange{asked.player.force_low, asked.player.force_high};
    chart.floor_mm = mm_from_metres(asked.note.floor);
    chart.reason = window.band.reason;
    return chart;
}

ClimbChart climb_chart(const sim::report::AskedClimb& asked, const sim::Climb& climb) {
    ClimbChart chart;
    const sim::String& string = climb.stops.front().note.string;
    chart.title = asked.run.preset.name + ", string " + string.name + ": where the bow must go as the stop climbs";
    chart.subtitle = sim::report::player_line(climb.player);
    chart.band_share = climb.player.band_share;
    chart.left_behind_mm = mm_from_metres(climb.stops.front().left_behind.contact_point);
    for (const sim::ClimbStop& stop : climb.stops) chart.stops.push_back(chart_stop(stop, asked.reference_pitch));
    return chart;
}

}  // namespace gui::charts
