// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/stack_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/series_look.hpp"
#include "gui/charts/sheet.hpp"

#include <QGraphicsPathItem>
#include <QGraphicsScene>

#include <algorithm>
#include <cmath>

namespace gui::charts {
namespace {

constexpr double gap_between = 16.0;   ///< px between panels
constexpr double title_height = 22.0;  ///< px more where a panel has a title
constexpr double bars_apart = 6.0;     ///< px between the bars of neighbouring lines
constexpr double cap = 3.0;            ///< px, half the width of a bar's end

bool is_shown(const std::optional<double>& value) { return value && std::isfinite(*value); }
bool has_bar(const StackPoint& point) { return is_shown(point.low) && is_shown(point.high); }
bool has_firm_bar(const StackPoint& point) { return has_bar(point) && !point.weak; }
bool has_weak_bar(const StackPoint& point) { return has_bar(point) && point.weak; }
bool is_missing(const StackPoint& point) { return !is_shown(point.y); }

template <class Test>
bool any_point(const StackChart& chart, Test test) {
    for (const StackPanel& panel : chart.panels)
        for (const auto& line : panel.lines)
            if (std::any_of(line.begin(), line.end(), test)) return true;
    return false;
}

Scale x_scale(const StackChart& chart) {
    Extent extent(chart.x.logarithmic);
    for (const StackPanel& panel : chart.panels)
        for (const auto& line : panel.lines)
            for (const StackPoint& point : line) extent.add(point.x);
    return extent.scale(0.05);
}

Scale y_scale(const StackPanel& panel) {
    Extent extent(panel.y.logarithmic);
    for (const auto& line : panel.lines)
        for (const StackPoint& point : line)
            for (const auto& value : {point.y, point.low, point.high})
                if (value) extent.add(*value);
    return extent.scale(0.08);
}

QPen bar_pen(const QColor& colour, bool weak) {
    return weak ? style::pen(colour, 1.6, {3, 2}) : style::pen(colour, 2.4);
}

/// Bars of different lines stand beside each other.
void draw_bars(const std::vector<StackPoint>& line, const QColor& colour, double shift, const Panel& panel,
               QGraphicsScene& scene) {
    QPainterPath firm;
    QPainterPath weak;
    for (const StackPoint& point : line) {
        if (!has_bar(point) || !panel.holds(point.x, *point.low) || !panel.holds(point.x, *point.high)) continue;
        const QPointF low = panel.at(point.x, *point.low) + QPointF(shift, 0);
        const QPointF high = panel.at(point.x, *point.high) + QPointF(shift, 0);
        QPainterPath& path = point.weak ? weak : firm;
        path.moveTo(low);
        path.lineTo(high);
        for (const QPointF& end : {low, high}) {
            path.moveTo(end - QPointF(cap, 0));
            path.lineTo(end + QPointF(cap, 0));
        }
    }
    scene.addPath(weak, bar_pen(colour, true))->setZValue(style::mark_layer);
    scene.addPath(firm, bar_pen(colour, false))->setZValue(style::mark_layer);
}

std::vector<SweepPoint> middles_of(const std::vector<StackPoint>& line) {
    std::vector<SweepPoint> points;
    for (const StackPoint& point : line) points.push_back({point.x, point.y});
    return points;
}

void draw_panel(const StackPanel& shown, Panel& panel, QGraphicsScene& scene) {
    double foot = panel.plot().bottom() - missing_height / 2.0;
    for (std::size_t i = 0; i < shown.lines.size(); ++i) {
        const SeriesLook look = series_look(i);
        const double shift = (static_cast<double>(i) - 0.5 * static_cast<double>(shown.lines.size() - 1)) * bars_apart;
        draw_bars(shown.lines[i], look.mark.colour, shift, panel, scene);
        draw_broken_line({.points = middles_of(shown.lines[i]), .look = look, .foot = foot}, panel, scene);
        if (std::any_of(shown.lines[i].begin(), shown.lines[i].end(), is_missing)) foot -= missing_height;
    }
}

void add_bar_sample(SideColumn& side, const std::string& name, bool weak) {
    side.add_sample(QString::fromStdString(name), [weak](QGraphicsScene& scene, const QRectF& place) {
        const double x = place.center().x();
        const QPen pen = bar_pen(style::soft_ink, weak);
        scene.addLine(x, place.top(), x, place.bottom(), pen);
        for (const double y : {place.top(), place.bottom()}) scene.addLine(x - cap, y, x + cap, y, pen);
    });
}

void add_legend(const StackChart& chart, SideColumn& side) {
    for (std::size_t i = 0; i < chart.names.size(); ++i) {
        const SeriesLook look = series_look(i);
        side.add_line(QString::fromStdString(chart.names[i]), look.pen, {look.mark});
    }
    if (any_point(chart, has_firm_bar)) add_bar_sample(side, chart.bar_name, false);
    if (any_point(chart, has_weak_bar)) add_bar_sample(side, chart.weak_bar_name, true);
    if (any_point(chart, is_missing))
        side.add_mark(chart.missing_name.empty() ? "no value" : QString::fromStdString(chart.missing_name),
                      missing_mark(style::ink));
    side.add_space(8.0);
    for (const std::string& note : chart.notes) side.add_note(note, {.pixels = 13});
}

double titles_height(const StackChart& chart) {
    const auto titled = std::count_if(chart.panels.begin(), chart.panels.end(),
                                      [](const StackPanel& panel) { return !panel.title.empty(); });
    return title_height * static_cast<double>(titled);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const StackChart& chart) {
    StackChart shown = chart;
    if (shown.panels.empty()) shown.panels.emplace_back();
    Sheet sheet = make_sheet({.title = shown.title, .subtitle = shown.subtitle, .warning = ""});
    const double top = sheet.content_top + 12.0;
    const auto count = static_cast<double>(shown.panels.size());
    const double height =
        (style::sheet_height - 58.0 - top - titles_height(shown) - gap_between * (count - 1.0)) / count;
    const Scale x = x_scale(shown);
    double y = top;
    for (std::size_t i = 0; i < shown.panels.size(); ++i) {
        const StackPanel& panel = shown.panels[i];
        if (!panel.title.empty()) {
            add_text(
                *sheet.scene,
                wrapped(QString::fromStdString(panel.title), style::plot_right - style::plot_left, {.bold = true}, 1)
                    .value(0),
                {style::plot_left, y}, Hold::left_top, {.bold = true});
            y += title_height;
        }
        Panel plot(*sheet.scene, QRectF(style::plot_left, y, style::plot_right - style::plot_left, height), x,
                   y_scale(panel));
        const bool last = i + 1 == shown.panels.size();
        plot.add_x_axis(last ? QString::fromStdString(shown.x.title) : QString(), last, shown.least_x_step);
        plot.add_y_axis(QString::fromStdString(panel.y.title));
        draw_panel(panel, plot, *sheet.scene);
        y += height + gap_between;
    }
    SideColumn side(*sheet.scene, top);
    add_legend(shown, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
