// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/gauge_answers.hpp"

#include "analysis/units.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

#include <algorithm>

namespace gui::charts {
namespace {

using analysis::mm_from_metres;

constexpr std::size_t most_stops = 4;

std::string name_of(const sim::GaugeStudy& study, const sim::GaugeRow& row) {
    const std::string gauge = sim::gauge_words(row.string.gauge);
    return study.whole_set ? row.string.name + " " + row.string.pitch + ": " + gauge
                           : (row.present ? "now: " : "") + gauge;
}

RowBar band_bar(const sim::BandResult& band) {
    RowBar bar{.range = {}, .mark = {}, .weak = !band.band};
    const std::optional<sim::Band>& place = band.band ? band.band : band.stretch;
    if (place) bar.range = Interval{mm_from_metres(place->near), mm_from_metres(place->far)};
    if (place && band.best) bar.mark = mm_from_metres(*band.best);
    return bar;
}

RowPanel band_panel(const sim::report::AskedGauges& asked, const sim::GaugeStudy& study, std::size_t index) {
    const sim::ClimbStop& stop = study.rows.front().stops[index];
    RowPanel panel{.title = "stop " + sim::short_number(stop.note.stop),
                   .x_title = "contact, mm",
                   .logarithmic = true,
                   .amount = false,
                   .bars = {}};
    if (!study.whole_set)
        panel.title += " (" + sim::pitch_name(fundamental(stop.note.string), asked.preset.reference_pitch) + ")";
    for (const sim::GaugeRow& row : study.rows) panel.bars.push_back(band_bar(row.stops[index].band));
    return panel;
}

/// A set's strings beside their own pull as set up, candidates beside that of the string they are for.
RowPanel pull_panel(const sim::report::AskedGauges& asked, const sim::GaugeStudy& study) {
    const sim::Preset& set_up = asked.run.preset;
    RowPanel panel{.title = "pull of the string", .x_title = "N", .logarithmic = false, .amount = true, .bars = {}};
    for (const sim::GaugeRow& row : study.rows) {
        const double before = open_string(set_up, preset_string(set_up, row.string.name)).tension;
        panel.bars.push_back({.range = Interval{0.0, row.open.tension}, .mark = before, .weak = false});
    }
    return panel;
}

bool has_weak(const RowsChart& chart) {
    return std::ranges::any_of(chart.panels, [](const RowPanel& panel) {
        return std::ranges::any_of(panel.bars, [](const RowBar& bar) { return bar.weak && bar.range; });
    });
}

}  // namespace

RowsChart gauges_chart(const sim::report::AskedGauges& asked, const sim::GaugeStudy& study) {
    RowsChart chart;
    chart.title = gauges_heading(asked, study) + (study.whole_set ? ": bands and pull" : ": gauges side by side");
    chart.subtitle = sim::report::player_line(study.player);
    for (const sim::GaugeRow& row : study.rows) chart.names.push_back(name_of(study, row));
    const std::size_t shown = std::min(study.stops.size(), most_stops);
    for (std::size_t i = 0; i < shown; ++i) chart.panels.push_back(band_panel(asked, study, i));
    chart.panels.push_back(pull_panel(asked, study));
    chart.range_name = "contact band, mm from the bridge";
    if (has_weak(chart)) chart.weak_name = "no band: the most secure stretch";
    chart.mark_name = "best contact point";
    chart.amount_name = "pull of the string";
    chart.amount_mark_name = "pull as the instrument is set up";
    chart.missing_name = "no stroke speaks";
    chart.notes.push_back(
        "All strings together: set up for " + sim::fixed_number(study.set_up_pull, 0) + " N" +
        (study.pull == study.set_up_pull ? std::string(".") : ", now " + sim::fixed_number(study.pull, 0) + " N."));
    if (!study.whole_set)
        chart.notes.push_back("From the top: ranked by " + std::string(gauge_aim_words(study.aim)) + " at stop " +
                              sim::short_number(study.aim_stop) + ".");
    if (shown < study.stops.size()) chart.notes.push_back("More stops stand in the table.");
    for (const sim::Caution& caution : study.cautions) chart.warnings.push_back(caution.text);
    return chart;
}

}  // namespace gui::charts
