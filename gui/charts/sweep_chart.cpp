// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/sweep_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/series_look.hpp"
#include "gui/charts/sheet.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace gui::charts {
namespace {

Scale scale_of(const SweepChart& chart, const SweepAxis& axis, std::optional<double> (*value)(const SweepPoint&)) {
    Extent extent(axis.logarithmic);
    for (const SweepSeries& series : chart.series)
        for (const SweepPoint& point : series.points)
            if (const auto number = value(point)) extent.add(*number);
    return extent.scale(0.05);
}

std::optional<double> x_of(const SweepPoint& point) { return point.x; }
std::optional<double> y_of(const SweepPoint& point) { return point.y; }

bool misses_some(const SweepSeries& series) {
    return !std::all_of(series.points.begin(), series.points.end(), has_value);
}

void add_legend(const SweepChart& chart, SideColumn& side) {
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        const SeriesLook look = series_look(i);
        const std::vector<MarkStyle> marks(chart.series[i].with_markers ? 1 : 0, look.mark);
        side.add_line(QString::fromStdString(chart.series[i].name), look.pen, marks);
    }
    if (std::any_of(chart.series.begin(), chart.series.end(), misses_some))
        side.add_mark(chart.missing_name.empty() ? "no value" : QString::fromStdString(chart.missing_name),
                      missing_mark(style::ink));
    side.add_space(8.0);
    for (const std::string& note : chart.notes) side.add_note(note);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const SweepChart& chart) {
    Sheet sheet = make_sheet({.title = chart.title, .subtitle = chart.subtitle, .warning = ""});
    const double top = sheet.content_top + 12.0;
    const QRectF plot(QPointF(style::plot_left, top), QPointF(style::plot_right, style::sheet_height - 58.0));
    Panel panel(*sheet.scene, plot, scale_of(chart, chart.x, x_of), scale_of(chart, chart.y, y_of));
    panel.add_x_axis(QString::fromStdString(chart.x.title));
    panel.add_y_axis(QString::fromStdString(chart.y.title));
    double foot = plot.bottom() - missing_height / 2.0;
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        draw_broken_line({.points = chart.series[i].points,
                          .look = series_look(i),
                          .with_markers = chart.series[i].with_markers,
                          .foot = foot},
                         panel, *sheet.scene);
        if (misses_some(chart.series[i])) foot -= missing_height;  // so that no cross covers another
    }
    SideColumn side(*sheet.scene, top);
    add_legend(chart, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
