// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/interval_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/sheet.hpp"

#include <algorithm>
#include <array>

namespace gui::charts {
namespace {

constexpr double thin_px = 1.6;
constexpr double thick_px = 7.0;
constexpr double missing_height = 15.0;

QColor colour_of(std::size_t index) {
    static const std::array<QColor, 5> colours{style::blue, style::orange, style::green, style::purple, style::ink};
    return colours[index % colours.size()];
}

MarkShape shape_of(std::size_t index) {
    static const std::array<MarkShape, 5> shapes{MarkShape::disc, MarkShape::open_square, MarkShape::triangle,
                                                 MarkShape::open_diamond, MarkShape::ring};
    return shapes[index % shapes.size()];
}

MarkStyle mark_of(std::size_t index) {
    return {.shape = shape_of(index), .colour = colour_of(index), .size = 10.0, .layer = style::top_mark_layer};
}

QPen pen_of(std::size_t index, double width) {
    QPen pen = style::pen(colour_of(index), width);
    pen.setCapStyle(Qt::FlatCap);
    return pen;
}

/// Where the pairs stand, rising, each once.
std::vector<double> places_of(const IntervalChart& chart) {
    std::vector<double> places;
    for (const IntervalSeries& series : chart.series)
        for (const IntervalPair& pair : series.pairs) places.push_back(pair.x);
    std::ranges::sort(places);
    const auto doubled = std::ranges::unique(places);
    places.erase(doubled.begin(), doubled.end());
    return places;
}

/// Side by side round the place, within 0.7 of the least distance between places.
double shift_of(const IntervalChart& chart, std::size_t index) {
    const std::vector<double> places = places_of(chart);
    double apart = 0.0;
    for (std::size_t i = 1; i < places.size(); ++i) {
        const double step = places[i] - places[i - 1];
        if (apart == 0.0 || step < apart) apart = step;
    }
    const double count = static_cast<double>(chart.series.size());
    return 0.7 * (apart > 0.0 ? apart : 1.0) * ((static_cast<double>(index) + 0.5) / count - 0.5);
}

void draw_pair(const IntervalPair& pair, double x, std::size_t index, Panel& panel, QGraphicsScene& scene) {
    const auto line = [&](const std::optional<Interval>& interval, double width) {
        if (interval) panel.add_line({{x, interval->low}, {x, interval->high}}, {.pen = pen_of(index, width)});
    };
    line(pair.thin, thin_px);
    line(pair.thick, thick_px);
    if (pair.thin) panel.add_marks({{x, pair.thin->low}, {x, pair.thin->high}}, mark_of(index));
    if (pair.thin && pair.thick) return;
    MarkStyle cross = mark_of(index);
    cross.shape = MarkShape::cross;
    const double foot = panel.plot().bottom() - missing_height / 2.0;
    add_marks(scene, {QPointF(panel.x_at(x), foot)}, cross);
}

void add_legend(const IntervalChart& chart, SideColumn& side) {
    for (std::size_t i = 0; i < chart.series.size(); ++i)
        side.add_line(QString::fromStdString(chart.series[i].name), pen_of(i, thin_px), {mark_of(i)});
    side.add_space(8.0);
    side.add_line(QString::fromStdString(chart.thin_name), style::pen(style::ink, thin_px));
    QPen thick = style::pen(style::ink, thick_px);
    thick.setCapStyle(Qt::FlatCap);
    side.add_line(QString::fromStdString(chart.thick_name), thick);
    MarkStyle cross = mark_of(0);
    cross.shape = MarkShape::cross;
    cross.colour = style::ink;
    side.add_mark("one of them is missing", cross);
    side.add_space(8.0);
    for (const std::string& note : chart.notes) side.add_note(note);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const IntervalChart& chart) {
    Sheet sheet = make_sheet({.title = chart.title, .subtitle = chart.subtitle, .warning = ""});
    const double top = sheet.content_top + 12.0;
    const QRectF plot(QPointF(style::plot_left, top), QPointF(style::plot_right, style::sheet_height - 58.0));
    Extent x(false);
    Extent y(true);
    for (std::size_t i = 0; i < chart.series.size(); ++i)
        for (const IntervalPair& pair : chart.series[i].pairs) {
            x.add(pair.x + shift_of(chart, i));
            for (const auto& interval : {pair.thin, pair.thick}) {
                if (!interval) continue;
                y.add(interval->low);
                y.add(interval->high);
            }
        }
    Panel panel(*sheet.scene, plot, x.scale(0.08), y.scale(0.08));
    panel.add_x_axis_at(QString::fromStdString(chart.x_title), places_of(chart));
    panel.add_y_axis(QString::fromStdString(chart.y_title));
    for (std::size_t i = 0; i < chart.series.size(); ++i)
        for (const IntervalPair& pair : chart.series[i].pairs)
            draw_pair(pair, pair.x + shift_of(chart, i), i, panel, *sheet.scene);
    SideColumn side(*sheet.scene, top);
    add_legend(chart, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
