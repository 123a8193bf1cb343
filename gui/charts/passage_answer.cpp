// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "gui/charts/answers.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

#include <algorithm>

namespace gui::charts {
namespace {

using analysis::mm_from_metres;
using sim::passage::BowedNote;

std::optional<ClimbBand> area_of(const std::optional<sim::Band>& band) {
    if (!band) return std::nullopt;
    return ClimbBand{mm_from_metres(band->near), mm_from_metres(band->far)};
}

PassageNote chart_note(const sim::report::AskedPassage& asked, const sim::passage::Fingering& fingering,
                       const sim::report::BowedPassage& bowed, std::size_t i) {
    const BowedNote& note = bowed.bow.notes[i];
    const sim::BandResult& band = kind_of(bowed.bow, note).band;
    const sim::passage::FingeredNote& fingered = fingering.notes[i];
    PassageNote shown{.from_s = note.start,
                      .to_s = note.start + note.duration,
                      .name = spelling_name(asked.tune.tune.notes[i].spelling),
                      .finger = fingered.finger,
                      .stop_mm = mm_from_metres(fingered.from_nut)};
    if (band.best) shown.best_mm = mm_from_metres(*band.best);
    shown.band = area_of(band.band);
    shown.stretch = area_of(band.stretch);
    shown.follows_fails = !sounds(bowed.played.follows[i]);
    shown.behind_fails = !sounds(bowed.played.left_behind[i]);
    return shown;
}

}  // namespace

PassageChart passage_chart(const sim::report::AskedPassage& asked, const sim::passage::Fingering& fingering,
                           const sim::report::BowedPassage& bowed) {
    PassageChart chart{.title = sim::report::passage_heading(asked),
                       .subtitle = sim::report::player_line(asked.preset.player) +
                                   " at mp; rosin: " + std::string(friction_law_name(asked.preset.friction.law))};
    for (std::size_t i = 0; i < bowed.bow.notes.size(); ++i)
        chart.notes.push_back(chart_note(asked, fingering, bowed, i));
    for (const sim::passage::HandPlace& place : fingering.hand_places) {
        const BowedNote& last = bowed.bow.notes[place.last];
        chart.hand_places.push_back({bowed.bow.notes[place.first].start, last.start + last.duration, place.name});
    }
    for (const sim::Profile::Point& point : bowed.bow.path.points)
        chart.path.push_back({point.time, mm_from_metres(point.value)});
    chart.left_behind_mm = mm_from_metres(bowed.bow.left_behind);
    chart.remarks = {failing_in_words(bowed.played), "The bow travels along the string at " +
                                                         sim::short_number(mm_from_metres(bowed.bow.plan.travel)) +
                                                         " mm/s at the most."};
    return chart;
}

}  // namespace gui::charts
