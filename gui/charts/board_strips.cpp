// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/board_strips.hpp"

#include "analysis/units.hpp"
#include "sim/report/frets_report.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

#include <algorithm>

namespace gui::charts {
namespace {

using analysis::mm_from_metres;

constexpr double beyond_mm = 5.0;        // of the board's end, so that its line is seen
constexpr double room_for_words = 60.0;  // mm, behind the longest bar

std::string mm_text(double metres) { return sim::fixed_number(mm_from_metres(metres), 1) + " mm"; }

std::string board_line(const sim::Preset& preset, const sim::FretTable& table) {
    return "strings of " + mm_text(table.length) + "; " + sim::report::temperament_words(preset) + "; A " +
           sim::short_number(preset.reference_pitch) + " Hz";
}

/// One row for a stop; nothing where nothing speaks.
std::optional<StripBar> bar_of(const sim::ClimbStop& stop, double reference_pitch) {
    const sim::BandResult& band = stop.band;
    const std::optional<sim::Band>& place = band.band ? band.band : band.stretch;
    if (!place || !band.best) return std::nullopt;
    const auto whole_mm = [](double metres) { return sim::fixed_number(mm_from_metres(metres), 0); };
    StripBar bar{.from_mm = mm_from_metres(place->near),
                 .to_mm = mm_from_metres(place->far),
                 .best_mm = mm_from_metres(*band.best),
                 .weak = !band.band,
                 .name = sim::short_number(stop.note.stop) + " " +
                         sim::pitch_name(fundamental(stop.note.string), reference_pitch),
                 .label = {}};
    bar.label = "best " + whole_mm(*band.best) + ", from " + whole_mm(place->near) + " to " + whole_mm(place->far) +
                (bar.weak ? " mm: no band" : " mm");
    return bar;
}

}  // namespace

Strip fret_strip(const sim::Preset& preset, const sim::FretTable& table) {
    Strip strip{.title = preset.name + (table.frets.empty() ? ": places on the board" : ": frets"),
                .lines = {board_line(preset, table), sim::report::height_words(table.height),
                          "Lay the zero edge against the nut, where the strings leave it. Blue: where a finger stops "
                          "the string on the bare board."},
                .zero = "nut",
                .length_mm = mm_from_metres(table.board_end) + beyond_mm,
                .marks = {},
                .rows = {}};
    for (const sim::Fret& fret : table.frets)
        strip.marks.push_back({.at_mm = mm_from_metres(fret.from_nut),
                               .kind = StripMark::Kind::fret,
                               .name = std::to_string(fret.number),
                               .label = mm_text(fret.from_nut)});
    for (const sim::FretPlace& place : table.bare) {
        const bool under_guide = table.guide && std::abs(place.from_nut - *table.guide) < 1e-6;
        if (!under_guide)
            strip.marks.push_back({.at_mm = mm_from_metres(place.from_nut),
                                   .kind = StripMark::Kind::finger,
                                   .name = sim::fixed_number(place.stop, 0),
                                   .label = mm_text(place.from_nut)});
    }
    if (table.guide)
        strip.marks.push_back({.at_mm = mm_from_metres(*table.guide),
                               .kind = StripMark::Kind::landmark,
                               .name = "12",
                               .label = mm_text(*table.guide) + " guide"});
    return strip;
}

Strip contact_ruler(const sim::Preset& preset, const sim::Climb& climb) {
    const std::string string = climb.stops.front().note.string.name;
    Strip strip{
        .title = preset.name + ", string " + string + ": where to bow",
        .lines = {sim::report::player_line(climb.player),
                  "Lay the zero edge under the strings against the bridge. Each row is a stop in semitones; the "
                  "bar is its contact band,",
                  "dashed where none is secure enough to be called one; the upright line in it is the best "
                  "place."},
        .zero = "bridge",
        .length_mm = 100.0,
        .marks = {},
        .rows = {}};
    for (const sim::ClimbStop& stop : climb.stops) {
        const auto bar = bar_of(stop, preset.reference_pitch);
        if (!bar) continue;
        strip.length_mm = std::max(strip.length_mm, bar->to_mm + room_for_words);
        strip.rows.push_back(*bar);
    }
    return strip;
}

}  // namespace gui::charts
