// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"

#include "analysis/units.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/scale.hpp"
#include "gui/charts/session.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <numbers>

#include <algorithm>
#include <cmath>
#include <complex>
#include "sim/report/tone_values.hpp"


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
charts::AdmittanceValue chart_value(double hz, std::complex<double> y) {
    return {hz, analysis::db_from_ratio(std::abs(y)), analysis::degrees_from_radians(std::arg(y))};
}

/// The modes' sum, evenly over log frequency and at every mode, so that no peak falls between.
std::vector<charts::AdmittanceValue> fitted_values(const sim::BridgeFit& fit) {
    constexpr int count = 1200;
    std::vector<double> places;
    for (int i = 0; i <= count; ++i)
        places.push_back(fit.range.low * std::pow(fit.range.high / fit.range.low, static_cast<double>(i) / count));
    for (const sim::BridgeMode& mode : fit.modes)
        if (mode.frequency > fit.range.low && mode.frequency < fit.range.high) places.push_back(mode.frequency);
    std::ranges::sort(places);
    std::vector<charts::AdmittanceValue> values;
    for (const double hz : places) values.push_back(chart_value(hz, sim::admittance(bridge_of(fit), hz)));
    return values;
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

charts::StackPoint speed_point(const sim::SpeedRow& row) {
    charts::StackPoint point{.x = row.player.speed, .y = {}, .low = {}, .high = {}};
    if (!row.is_secure()) return point;
    point.y = mm_from_metres(*row.band.best);
    point.low = mm_from_metres(row.place()->near);
    point.high = mm_from_metres(row.place()->far);
    point.weak = !row.band.band;
    return point;
}

charts::StackPoint security_point(const sim::SpeedRow& row) {
    return {.x = row.player.speed, .y = row.is_secure() ? row.band.at_best.security : 0.0, .low = {}, .high = {}};
}

/// One line a stop.  The dynamics stand among the other strokes of one force / speed; none is drawn twice.
charts::StackPanel speed_panel(const sim::SpeedStudy& study, bool same_forces, const charts::SweepAxis& axis,
                               charts::StackPoint (*point)(const sim::SpeedRow&)) {
    charts::StackPanel panel{.title = {}, .y = axis, .lines = {}};
    for (std::size_t i = 0; i < study.rows.size(); ++i) {
        const sim::SpeedRow& row = study.rows[i];
        if (i == 0 || !(row.note.stop == study.rows[i - 1].note.stop)) panel.lines.emplace_back();
        if ((row.rule == sim::ForceRule::same_forces) == same_forces) panel.lines.back().push_back(point(row));
    }
    for (auto& line : panel.lines) {
        std::ranges::stable_sort(line, {}, &charts::StackPoint::x);
        const auto doubled = std::ranges::unique(line, {}, &charts::StackPoint::x);
        line.erase(doubled.begin(), doubled.end());
    }
    return panel;
}

/// "soft to loud: pp at 0.1, p at 0.14, … m/s"
std::string dynamics_title(const sim::SpeedStudy& study) {
    std::string title = "forces in proportion to the speed, soft to loud:";
    for (const sim::Dynamic& dynamic : sim::dynamics)
        title += std::string(&dynamic == &sim::dynamics.front() ? " " : ", ") + std::string(dynamic.name) + " at " +
                 charts::number_text(dynamic.factor * study.player.speed);
    return title + " m/s";
}

}  // namespace

void require_chart_place(const std::filesystem::path& place) { charts::require_chart_ending(place); }

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

void draw_speeds_chart(const analysis::OutputFile& file, const sim::report::AskedSpeeds& asked,
                       const sim::SpeedStudy& study) {
    charts::StackChart chart;
    chart.title = sim::report::speeds_heading(asked, study) + ": where to bow, slow to quick";
    chart.subtitle = sim::report::player_line(study.player) + " where nothing else is said";
    chart.x = {.title = "bow speed, m/s", .logarithmic = true};
    for (std::size_t i = 0; i < study.rows.size(); ++i) {
        const sim::Note& note = study.rows[i].note;
        if (i == 0 || !(note.stop == study.rows[i - 1].note.stop))
            chart.names.push_back("best contact point, stop " + charts::number_text(note.stop) + " (" +
                                  sim::pitch_name(fundamental(note.string), asked.reference_pitch) + ")");
    }
    const charts::SweepAxis place{.title = "contact point, mm", .logarithmic = true};
    const charts::SweepAxis secure{.title = "security, share"};
    chart.panels = {speed_panel(study, true, place, speed_point), speed_panel(study, true, secure, security_point),
                    speed_panel(study, false, place, speed_point), speed_panel(study, false, secure, security_point)};
    chart.panels[0].title = sim::report::force_rule_words(sim::ForceRule::same_forces);
    chart.panels[2].title = dynamics_title(study);
    chart.notes = {
        "Contact points are mm from the bridge. Security: share of strokes that speak and keep their tone, at "
        "the best contact point."};
    chart.bar_name = "contact band, near to far";
    chart.weak_bar_name = "no band: the most secure stretch";
    chart.missing_name = "no stroke keeps its tone";
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
            const double degrees = row.angle * 180.0 / std::numbers::pi;
            drifting.points.push_back({degrees, 100.0 * row.drifting.security});
            sliding.points.push_back({degrees, 100.0 * row.sliding.security});
        }
        chart.series.push_back(drifting);
        chart.series.push_back(sliding);
    }
    chart.notes = {"drifting: the contact wanders along the string",
                   "sliding: the place is kept, the hair slides lengthwise"};
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
void draw_bridge_chart(const analysis::OutputFile& file, const sim::report::AskedBridge& asked,
                       const sim::MeasuredBridge& measured, const sim::BridgeFit& fit) {
    charts::BridgeChart chart;
    chart.title = "Admittance of a bridge: " + std::filesystem::path(asked.file).filename().string();
    chart.subtitle = sim::report::bridge_line(fit);
    for (std::size_t i = 0; i < measured.hz.size(); ++i)
        if (measured.hz[i] >= fit.range.low && measured.hz[i] <= fit.range.high)
            chart.measured.push_back(chart_value(measured.hz[i], measured.admittance[i]));
    chart.fitted = fitted_values(fit);
    for (const sim::BridgeMode& mode : fit.modes) {
        if (mode.frequency < fit.range.low || mode.frequency > fit.range.high) continue;
        const std::complex<double> y = sim::admittance(bridge_of(fit), mode.frequency);
        chart.modes.push_back({mode.frequency, chart_value(mode.frequency, y).level_db});
    }
    chart.notes = fit.remarks;
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

}  // namespace cli
