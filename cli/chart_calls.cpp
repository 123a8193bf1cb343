// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"

#include "analysis/units.hpp"
#include "gui/charts/answers.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"
#include "sim/text.hpp"

#include <algorithm>

namespace cli {
namespace {

using analysis::mm_from_metres;
namespace charts = gui::charts;

std::optional<charts::Interval> interval_of(const sim::ForceWindow& window) {
    if (!window.main) return std::nullopt;
    return charts::Interval{window.intervals[*window.main].low, window.intervals[*window.main].high};
}

}  // namespace

void require_chart_place(const std::string&, const std::filesystem::path& place) {
    charts::require_chart_ending(place);
}

void draw_window_chart(const analysis::OutputFile& file, const sim::report::Asked& asked, const sim::Window& window) {
    const charts::ChartSession session;
    charts::fill_chart(file, charts::window_chart(asked, window));
}

void draw_climb_chart(const analysis::OutputFile& file, const sim::report::AskedClimb& asked, const sim::Climb& climb) {
    const charts::ChartSession session;
    charts::fill_chart(file, charts::climb_chart(asked, climb));
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
