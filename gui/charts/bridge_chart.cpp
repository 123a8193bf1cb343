// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/bridge_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/sheet.hpp"

#include <algorithm>
#include <cmath>

namespace gui::charts {
namespace {

constexpr double gap_between = 22.0;    // px
constexpr double level_share = 0.62;    // of the height
constexpr double least_phase = -130.0;  // degrees; a driving point stays within a quarter turn
constexpr double most_phase = 130.0;
constexpr std::size_t most_drawn = 1500;  // points; beyond it those of a pixel are drawn together

const QPen measured_pen = style::pen(style::mid_grey, 5.0);
const QPen fitted_pen = style::pen(style::blue, 1.6);
const QPen mode_pen = style::pen(style::grey, 1.0, {2, 4});
const QPen quarter_pen = style::pen(style::soft_ink, 1.2, {6, 4});
const MarkStyle mode_mark{
    .shape = MarkShape::triangle_down, .colour = style::red, .size = 11.0, .layer = style::top_mark_layer};

using Line = double (*)(const AdmittanceValue&);
double level_of(const AdmittanceValue& value) { return value.level_db; }
double phase_of(const AdmittanceValue& value) { return value.phase_degrees; }

Scale hz_scale(const BridgeChart& chart) {
    Extent extent(true);
    for (const auto* values : {&chart.measured, &chart.fitted})
        for (const AdmittanceValue& value : *values) extent.add(value.hz);
    return extent.scale(0.01);
}

/// Down to 25 dB under the lowest fitted value at the most: noise may fall to nothing.
Scale level_scale(const BridgeChart& chart) {
    Extent fitted(false);
    for (const AdmittanceValue& value : chart.fitted) fitted.add(value.level_db);
    const Scale around = fitted.scale(0.0);
    Extent extent(false);
    for (const auto* values : {&chart.measured, &chart.fitted})
        for (const AdmittanceValue& value : *values)
            if (chart.fitted.empty() || (value.level_db > around.low - 25.0 && value.level_db < around.high + 25.0))
                extent.add(value.level_db);
    return extent.scale(0.06);
}

/// Highest and lowest value in each pixel, in the order in which they come.
Polyline thinned(const std::vector<AdmittanceValue>& values, Line line, const Panel& panel) {
    Polyline all;
    for (const AdmittanceValue& value : values)
        if (panel.x().shows(value.hz) && std::isfinite(line(value))) all.push_back({value.hz, line(value)});
    if (all.size() <= most_drawn) return all;
    Polyline drawn;
    for (auto first = all.begin(); first != all.end();) {
        const double pixel = std::floor(panel.x_at(first->x));
        const auto end = std::find_if(first, all.end(), [&](const Place& p) { return panel.x_at(p.x) >= pixel + 1.0; });
        auto [low, high] = std::minmax_element(first, end, [](const Place& a, const Place& b) { return a.y < b.y; });
        if (high < low) std::swap(low, high);
        drawn.push_back(*low);
        if (high != low) drawn.push_back(*high);
        first = end;
    }
    return drawn;
}

void draw_lines(const BridgeChart& chart, Line line, Panel& panel) {
    panel.add_line(thinned(chart.measured, line, panel), {.pen = measured_pen});
    panel.add_line(thinned(chart.fitted, line, panel), {.pen = fitted_pen});
}

void add_legend(const BridgeChart& chart, SideColumn& side) {
    side.add_heading("lines and marks");
    side.add_line("measured (broad, pale)", measured_pen);
    side.add_line("sum of the fitted modes (thin, dark)", fitted_pen);
    side.add_line("a fitted mode", mode_pen, {mode_mark});
    side.add_line("a quarter turn: beyond it power would come out of the body", quarter_pen);
    side.add_space(8.0);
    for (const std::string& note : chart.notes) side.add_note(note);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const BridgeChart& chart) {
    Sheet sheet = make_sheet({.title = chart.title, .subtitle = chart.subtitle, .warning = ""});
    const double top = sheet.content_top + 12.0;
    const double height = style::sheet_height - 58.0 - top - gap_between;
    const double width = style::plot_right - style::plot_left;
    const QRectF above(style::plot_left, top, width, height * level_share);
    const QRectF below(style::plot_left, above.bottom() + gap_between, width, height * (1.0 - level_share));
    Panel level(*sheet.scene, above, hz_scale(chart), level_scale(chart));
    Panel phase(*sheet.scene, below, hz_scale(chart), {.low = least_phase, .high = most_phase});
    level.add_x_axis("", false);
    level.add_y_axis("admittance, dB re 1 m/s/N");
    phase.add_x_axis("frequency, Hz");
    phase.add_y_axis("phase, degrees");
    Polyline marks;
    for (const ModeMark& mode : chart.modes) {
        if (!level.x().shows(mode.hz)) continue;
        level.add_upright_line(mode.hz, mode_pen);
        phase.add_upright_line(mode.hz, mode_pen);
        marks.push_back({mode.hz, mode.level_db});
    }
    for (const double quarter : {-90.0, 90.0}) phase.add_level_line(quarter, quarter_pen);
    draw_lines(chart, level_of, level);
    draw_lines(chart, phase_of, phase);
    level.add_marks(marks, mode_mark);
    SideColumn side(*sheet.scene, top);
    add_legend(chart, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
