// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"
#include "sim/report/table.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace cli {
namespace {

namespace charts = gui::charts;

/// The note whose bars are drawn: the octave, else the last of the shown ones.
std::size_t charted_note(const sim::Sensitivity& all) {
    std::size_t chosen = 0;
    for (std::size_t i = 0; i < all.shown.size(); ++i) {
        if (!all.shown[i]) continue;
        chosen = i;
        if (all.plan.stops[i] == 12.0) break;
    }
    return chosen;
}

std::optional<double> ratio_of(const std::optional<double>& changed, const std::optional<double>& nominal) {
    const std::optional<double> shift = sim::shift(changed, nominal);
    return shift ? std::optional(1.0 + *shift) : std::nullopt;
}

/// Best place, least and greatest force under both directions.
std::vector<charts::TornadoBar> bars_of(const sim::Sensitivity& all, const sim::SensitivityRow& up, std::size_t note) {
    const sim::SensitivityNote& nominal = all.rows.front().notes[note];
    const sim::SensitivityNote& more = up.notes[note];
    const sim::SensitivityNote& less = (&up + 1)->notes[note];  // rows come in pairs
    return {{ratio_of(more.band.best, nominal.band.best), ratio_of(less.band.best, nominal.band.best)},
            {ratio_of(more.forces.low, nominal.forces.low), ratio_of(less.forces.low, nominal.forces.low)},
            {ratio_of(more.forces.high, nominal.forces.high), ratio_of(less.forces.high, nominal.forces.high)}};
}

/// How far the best place is thrown, so that rows can be sorted by it.
double thrown(const charts::TornadoBar& bar) {
    const auto one = [](const std::optional<double>& ratio) { return ratio ? std::abs(std::log(*ratio)) : 0.0; };
    return std::max(one(bar.up), one(bar.down));
}

}  // namespace

void draw_sensitivity_chart(const analysis::OutputFile& file, const sim::report::AskedSensitivity& asked,
                            const sim::Sensitivity& all) {
    const std::size_t note = charted_note(all);
    const double stop = all.plan.stops[note];
    const std::string factor = sim::short_number(all.plan.factor);
    const std::string at = stop == 0.0 ? "open" : stop == 12.0 ? "octave" : "stop " + sim::short_number(stop);
    charts::TornadoChart chart;
    chart.title = sim::report::sensitivity_heading(asked, all) + ", " + at;
    chart.subtitle =
        sim::report::player_line(all.subject.preset.player) + "; " + sim::report::grid_words(all.plan.grid);
    chart.up_name = "constant times " + factor;
    chart.down_name = "constant divided by " + factor;
    chart.noise_name = "what another grid alone moves: noise";
    chart.missing_name = "nothing plays, or the edge lies past the forces tried";
    chart.panels = {{"best contact point", {}}, {"least force that speaks", {}}, {"greatest force that speaks", {}}};
    for (std::size_t i = 1; i + 1 < all.rows.size(); i += 2) {
        const std::vector<charts::TornadoBar> bars = bars_of(all, all.rows[i], note);
        if (all.rows[i].constant != nullptr) {
            chart.rows.push_back({std::string(all.rows[i].constant->what), bars});
            continue;
        }
        for (std::size_t k = 0; k < bars.size(); ++k) chart.panels[k].noise = bars[k];
    }
    std::ranges::stable_sort(chart.rows, std::greater(),
                             [](const charts::TornadoRow& row) { return thrown(row.bars.front()); });
    chart.notes = {"Sorted by how far the best contact point is thrown.",
                   "Forces are found where the bow does best without any change: " +
                       sim::report::mm_cell(all.rows.front().notes[note].band.best, 0) + " mm from the bridge."};
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

}  // namespace cli
