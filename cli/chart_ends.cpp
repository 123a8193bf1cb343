// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "cli/chart_calls.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"

namespace cli {
namespace {

using analysis::mm_from_metres;
namespace charts = gui::charts;

/// One panel: a value at every contact point or partial, for each end.
charts::EndsChart ends_values(const sim::Ends& ends) {
    charts::EndsChart chart;
    for (const sim::EndAnswer& answer : ends.answers) {
        charts::EndsSeries series{.name = sim::report::end_words(answer.end), .soft = answer.end.finger_q > 0.0};
        for (const sim::HeldPlace& place : answer.places) {
            charts::EndsForce force{.contact_mm = mm_from_metres(place.contact_point)};
            if (place.held.main) {
                force.min_newtons = place.held.intervals[*place.held.main].low;
                force.max_newtons = place.held.intervals[*place.held.main].high;
            }
            series.forces.push_back(force);
        }
        for (const sim::RingingPartial& partial : answer.partials)
            if (partial.ring_time) series.ringing.push_back({partial.number, *partial.ring_time});
        chart.series.push_back(std::move(series));
    }
    return chart;
}

}  // namespace

void draw_ends_chart(const analysis::OutputFile& file, const sim::report::Asked& asked, const sim::Ends& ends) {
    charts::EndsChart chart = ends_values(ends);
    chart.title = sim::report::note_heading(asked);
    chart.subtitle = "what ends the string at this place; " + sim::report::player_line(asked.player) +
                     "; rosin: " + std::string(friction_law_name(asked.note.friction.law));
    chart.contact_mm = mm_from_metres(ends.contact_point);
    chart.notes = {sim::report::ends_in_words(ends), "Nut and fret are the same hard end here.",
                   "A finger's Q is from memory."};
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

}  // namespace cli
