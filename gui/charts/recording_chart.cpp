// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/recording_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/series_look.hpp"
#include "gui/charts/sheet.hpp"

#include <algorithm>

namespace gui::charts {
namespace {

constexpr double gap = 18.0;              // px between the two plots over time
constexpr double gap_to_partials = 74.0;  // px
constexpr double pitch_share = 0.36;      // of the height
constexpr double brightness_share = 0.26;
constexpr double lowest_level = -60.0;    // dB, of a partial that is drawn
constexpr std::size_t most_drawn = 1500;  // moments of the pitch
constexpr std::size_t most_partials = 4;

const QPen note_pen = style::pen(style::blue, 3.0);
const QPen brightness_pen = style::pen(style::red, 2.0);
const MarkStyle moment_mark{
    .shape = MarkShape::disc, .colour = style::orange, .size = 3.0, .layer = style::top_mark_layer};
const MarkStyle brightness_mark{
    .shape = MarkShape::diamond, .colour = style::red, .size = 6.0, .layer = style::top_mark_layer};
const QPen unpitched_pen = style::pen(style::mid_grey, 1.0);

Hatch unpitched_hatch() { return {.pen = unpitched_pen, .apart = 9.0, .rising = true}; }

struct Scales {
    Scale time;
    Scale pitch;
    Scale brightness;
    Scale partials;
};

Scales scales_of(const RecordingChart& chart) {
    Extent time(false);
    Extent pitch(true);
    Extent brightness(true);
    Extent partials(true);
    time.add(0.0);
    for (const HeardNote& note : chart.notes) {
        time.add(note.to);
        if (note.hz) {
            pitch.add(*note.hz / 1.3);  // a note alone is not blown up to its wobble
            pitch.add(*note.hz * 1.3);
        }
        for (const HeardValue& value : note.brightness) {
            brightness.add(value.hz / 1.2);
            brightness.add(value.hz * 1.2);
        }
    }
    for (const HeardValue& value : chart.pitch) time.add(value.time);
    for (const HeardPartials& set : chart.partials)
        for (const auto& level : set.levels) partials.add(level.hz);
    return {time.scale(0.02), pitch.scale(0.08), brightness.scale(0.05), partials.scale(0.04)};
}

void draw_pitch(const RecordingChart& chart, Panel& panel) {
    Polyline moments;
    const std::size_t step = chart.pitch.size() / most_drawn + 1;
    for (std::size_t i = 0; i < chart.pitch.size(); i += step)
        moments.push_back({chart.pitch[i].time, chart.pitch[i].hz});
    panel.add_marks(moments, moment_mark);
    for (const HeardNote& note : chart.notes) {
        if (!note.hz) {
            panel.add_strip(note.from, note.to, style::faint_grey, unpitched_hatch());
            continue;
        }
        panel.add_line({{note.from, *note.hz}, {note.to, *note.hz}}, {.pen = note_pen, .halo = true});
    }
}

void draw_brightness(const RecordingChart& chart, Panel& panel) {
    for (const HeardNote& note : chart.notes) {
        Polyline line;
        for (const HeardValue& value : note.brightness) line.push_back({value.time, value.hz});
        panel.add_line(line, {.pen = brightness_pen});
        if (chart.notes.size() <= 40) panel.add_marks(line, brightness_mark);
    }
}

void draw_partials(const RecordingChart& chart, Panel& panel) {
    for (std::size_t i = 0; i < std::min(most_partials, chart.partials.size()); ++i) {
        const SeriesLook look = series_look(i);
        Polyline line;
        for (const auto& level : chart.partials[i].levels)
            line.push_back({level.hz, std::max(level.level_db, lowest_level)});
        panel.add_line(line, {.pen = look.pen});
        panel.add_marks(line, look.mark);
    }
}

void add_legend(const RecordingChart& chart, SideColumn& side) {
    side.add_heading("pitch and brightness");
    side.add_mark("pitch, moment by moment", moment_mark);
    side.add_line("a note's pitch", note_pen);
    side.add_line("brightness: centroid of the partials to 8 kHz, weighted by amplitude", brightness_pen,
                  {brightness_mark});
    if (std::ranges::any_of(chart.notes, [](const HeardNote& note) { return !note.hz; }))
        side.add_sample("sound without a pitch", [](QGraphicsScene& scene, const QRectF& place) {
            add_hatched_box(scene, place, style::faint_grey, unpitched_hatch());
        });
    if (!chart.partials.empty()) {
        side.add_space(8.0);
        side.add_heading("partials of");
        for (std::size_t i = 0; i < std::min(most_partials, chart.partials.size()); ++i) {
            const SeriesLook look = series_look(i);
            side.add_line(QString::fromStdString(chart.partials[i].name), look.pen, {look.mark});
        }
    }
    side.add_space(8.0);
    for (const std::string& remark : chart.remarks) side.add_note(remark);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const RecordingChart& chart) {
    Sheet sheet = make_sheet({.title = chart.title, .subtitle = chart.subtitle, .warning = ""});
    const double top = sheet.content_top + 12.0;
    const double height = style::sheet_height - 58.0 - top - gap - gap_to_partials;
    const double width = style::plot_right - style::plot_left;
    const QRectF above(style::plot_left, top, width, height * pitch_share);
    const QRectF middle(style::plot_left, above.bottom() + gap, width, height * brightness_share);
    const QRectF below(style::plot_left, middle.bottom() + gap_to_partials, width,
                       height * (1.0 - pitch_share - brightness_share));
    const Scales scales = scales_of(chart);
    Panel pitch(*sheet.scene, above, scales.time, scales.pitch);
    pitch.add_x_axis("", false);
    pitch.add_y_axis("pitch, Hz");
    draw_pitch(chart, pitch);
    Panel brightness(*sheet.scene, middle, scales.time, scales.brightness);
    brightness.add_x_axis("time, s");
    brightness.add_y_axis("brightness, Hz");
    draw_brightness(chart, brightness);
    Panel partials(*sheet.scene, below, scales.partials, {.low = lowest_level - 2.0, .high = 3.0});
    partials.add_x_axis("partial, Hz");
    partials.add_y_axis("level, dB under the strongest");
    draw_partials(chart, partials);
    SideColumn side(*sheet.scene, top);
    add_legend(chart, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
