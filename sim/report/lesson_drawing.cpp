// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/lesson_parts.hpp"

#include "analysis/units.hpp"
#include "sim/frets.hpp"
#include "sim/report/html.hpp"
#include "sim/report/string_drawing.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cmath>

namespace sim::report {
namespace {

constexpr double wide = 760.0;    // px
constexpr double narrow = 360.0;  // px
constexpr double close_margin = 1.08;

StopRow row_of(const ClimbStop& stop, const std::string& name) {
    StopRow row;
    row.label = short_number(stop.note.stop) + " " + name;
    row.sounding = stop.note.string.length;
    row.open = stop.note.stop == 0.0;
    const std::optional<Band>& band = stop.band.band ? stop.band.band : stop.band.stretch;
    if (band) {
        row.near = band->near;
        row.far = band->far;
    }
    row.is_band = stop.band.band.has_value();
    row.best = stop.band.best;
    if (stop.left_behind.stroke) row.left_behind = stop.left_behind.contact_point;
    return row;
}

/// Everything a bow comes to, and a little more, in whole centimetres.
double close_reach(const std::vector<StopRow>& rows) {
    double farthest = 0.0;
    for (const StopRow& row : rows)
        for (const std::optional<double>& place : {row.far, row.best, row.left_behind})
            farthest = std::max(farthest, place.value_or(0.0));
    return std::ceil(100.0 * close_margin * farthest) / 100.0;
}

StringDrawing drawing_of(const AskedLesson& asked, const Lesson& lesson) {
    StringDrawing drawing;
    drawing.length = lesson.climb.stops.front().note.open_length;
    drawing.board_end = drawing.length * (1.0 - asked.preset.board_end_ratio);
    drawing.hair_width = asked.preset.hair_width;
    drawing.floor = contact_floor(asked.preset);
    for (int fret = 1; fret <= asked.preset.frets; ++fret)
        drawing.frets.push_back(drawing.length - fret_place(asked.preset, asked.string, fret).from_nut);
    if (asked.preset.guide_fret) drawing.guide_fret = 0.5 * drawing.length;
    for (const ClimbStop& stop : lesson.climb.stops) drawing.rows.push_back(row_of(stop, note_name(stop, asked)));
    return drawing;
}

/// The same drawing for wide and narrow screens; the page's style shows one of them.
std::string both_widths(StringDrawing drawing, const std::string& id) {
    std::string text;
    for (const bool is_wide : {true, false}) {
        drawing.width = is_wide ? wide : narrow;
        drawing.id = id + (is_wide ? "-wide" : "-narrow");
        text += element("div", string_svg(drawing), {{"class", is_wide ? "for-wide" : "for-narrow"}}) + "\n";
    }
    return text;
}

/// A sample of a mark and what it means.
std::string legend_item(const std::string& mark, const std::string& meaning) {
    const std::string sample = element("svg", mark,
                                       {{"xmlns", "http://www.w3.org/2000/svg"},
                                        {"class", "sample"},
                                        {"viewBox", "0 0 34 20"},
                                        {"aria-hidden", "true"}});
    return element("li", sample + " " + escaped(meaning)) + "\n";
}

std::string legend(const StringDrawing& drawing) {
    const auto any = [&](auto test) { return std::ranges::any_of(drawing.rows, test); };
    std::string items;
    items += legend_item(
        R"(<line class="idle" x1="0" y1="10" x2="12" y2="10"/><circle class="finger" cx="12" cy="10" r="4.5"/><line class="string" x1="12" y1="10" x2="34" y2="10"/>)",
        "finger; the string sounds from here to the bridge");
    if (any([](const StopRow& row) { return row.near && row.is_band; }))
        items += legend_item(R"(<rect class="band" x="2" y="3" width="30" height="14"/>)",
                             "contact band: the bow may stray here");
    if (any([](const StopRow& row) { return row.near && !row.is_band; }))
        items += legend_item(R"(<rect class="stretch" x="2" y="3" width="30" height="14"/>)",
                             "no band, but the bow does nearly as well as it can here");
    items += legend_item(
        R"(<rect class="hair" x="10" y="6" width="14" height="8"/><line class="best" x1="17" y1="2" x2="17" y2="18"/>)",
        "best place, with the width of the hair");
    items += legend_item(
        R"(<line class="behind" x1="12" y1="5" x2="22" y2="15"/><line class="behind" x1="12" y1="15" x2="22" y2="5"/>)",
        "the bow left behind, where it suited the lowest stop");
    items += legend_item(R"(<rect class="floor" x="2" y="3" width="30" height="14"/>)",
                         "no room for the hair before the bridge");
    return element("ul", "\n" + items, {{"class", "legend"}}) + "\n";
}

std::string figure(const std::string& inside, const std::string& caption, const std::string& more) {
    return element("figure", "\n" + inside + text_element("figcaption", caption) + "\n" + more) + "\n";
}

}  // namespace

std::string drawing_part(const AskedLesson& asked, const Lesson& lesson) {
    StringDrawing drawing = drawing_of(asked, lesson);
    const std::string mm = fixed_number(analysis::mm_from_metres(drawing.length), 0);
    const std::string key = legend(drawing);
    drawing.reach = drawing.length;
    drawing.title = "The whole string, to scale";
    drawing.description =
        "From nut to bridge, one row a stop: the finger, the sounding part, and near the bridge the band and the best "
        "place of the bow. The table under Your numbers holds the same places in millimetres.";
    const std::string whole = figure(both_widths(drawing, "whole"),
                                     "The whole string, " + mm +
                                         " mm from nut to bridge, to scale. One row a stop, the finger climbs from top "
                                         "to bottom.",
                                     key);
    drawing.reach = std::min(drawing.length, close_reach(drawing.rows));
    drawing.title = "The last " + fixed_number(analysis::mm_from_metres(drawing.reach), 0) + " mm before the bridge";
    const std::string close =
        figure(both_widths(drawing, "close"), "The same near the bridge, larger. The hair has its true width.", "");
    return section("string", "The string and the bow", whole + close);
}

}  // namespace sim::report
