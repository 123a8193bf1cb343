// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/panel.hpp"

#include <QChart>
#include <QGraphicsLayout>
#include <QGraphicsLineItem>
#include <QGraphicsPathItem>
#include <QGraphicsRectItem>
#include <QGraphicsScene>
#include <QGraphicsSimpleTextItem>
#include <QLineSeries>
#include <QValueAxis>

#include <algorithm>
#include <cmath>

namespace gui::charts {
namespace {

constexpr double tick_length = 5.0;
constexpr double x_ticks_apart = 46.0;
constexpr double y_ticks_apart = 24.0;
const TextStyle tick_text{.pixels = 13};

/// An axis that only measures: its ticks are drawn by the panel, since Qt's logarithmic ones label powers of ten alone.
QValueAxis* bare_axis(const Scale& scale) {
    auto* axis = new QValueAxis;
    axis->setRange(scale.along(scale.low), scale.along(scale.high));
    axis->setLabelsVisible(false);
    axis->setGridLineVisible(false);
    axis->setLineVisible(false);
    return axis;
}

/// Lives in the scene.
QChart* bare_chart(QGraphicsScene& scene, const QRectF& plot, const Scale& x, const Scale& y) {
    auto* chart = new QChart;
    chart->setBackgroundVisible(false);
    chart->legend()->hide();
    chart->layout()->setContentsMargins(0, 0, 0, 0);
    chart->setMargins({});
    chart->addAxis(bare_axis(x), Qt::AlignBottom);
    chart->addAxis(bare_axis(y), Qt::AlignLeft);
    chart->setGeometry(scene.sceneRect());
    chart->setPlotArea(plot);
    chart->setZValue(style::line_layer);
    scene.addItem(chart);
    return chart;
}

void add_series(QChart& chart, const Polyline& piece, const QPen& pen) {
    auto* series = new QLineSeries;
    for (const Place& place : piece) series->append(place.x, place.y);
    series->setPen(pen);
    chart.addSeries(series);
    for (QAbstractAxis* axis : chart.axes()) series->attachAxis(axis);
}

QPainterPath hatch_path(const QRectF& place, const Hatch& hatch) {
    const Box box{.left = place.left(), .right = place.right(), .low = place.top(), .high = place.bottom()};
    const double reach = place.height();
    const double step = hatch.apart * std::sqrt(2.0);
    QPainterPath path;
    // strokes keep to one lattice over the sheet, so that neighbouring boxes join
    for (double foot = std::floor((box.left - reach) / step) * step; foot < box.right + reach; foot += step) {
        const double shift = hatch.rising ? reach : -reach;
        for (const Polyline& piece : clipped({{foot, box.high}, {foot + shift, box.low}}, box)) {
            path.moveTo(piece.front().x, piece.front().y);
            path.lineTo(piece.back().x, piece.back().y);
        }
    }
    return path;
}

}  // namespace

void add_hatch(QGraphicsScene& scene, const QRectF& place, const Hatch& hatch, double layer) {
    scene.addPath(hatch_path(place, hatch), hatch.pen)->setZValue(layer);
}

void add_hatched_box(QGraphicsScene& scene, const QRectF& place, const QColor& tint, const Hatch& hatch) {
    scene.addRect(place, Qt::NoPen, tint)->setZValue(style::tint_layer);
    add_hatch(scene, place, hatch, style::hatch_layer);
}

Panel::Panel(QGraphicsScene& scene, const QRectF& plot, const Scale& x, const Scale& y)
    : scene_(&scene), plot_(plot), x_(x), y_(y), chart_(bare_chart(scene, plot, x, y)) {
    scene.addRect(plot, style::pen(style::ink, 1.2))->setZValue(style::frame_layer);
}

double Panel::x_at(double x) const { return plot_.left() + x_.share(x) * plot_.width(); }
double Panel::y_at(double y) const { return plot_.bottom() - y_.share(y) * plot_.height(); }

bool Panel::holds(double x, double y) const {
    return x_.shows(x) && y_.shows(y) && plot_.adjusted(-0.01, -0.01, 0.01, 0.01).contains(at(x, y));
}

void Panel::add_grid_line(QPointF from, QPointF to) {
    scene_->addLine(QLineF(from, to), style::pen(style::grid, 1.0))->setZValue(style::grid_layer);
}

void Panel::add_x_axis(const QString& title, bool with_labels, double least_step) {
    const TickRoom room{.pixels = plot_.width(), .least_apart = x_ticks_apart, .least_step = least_step};
    for (const Tick& tick : ticks(x_, room)) add_x_tick(tick, with_labels);
    add_x_title(title);
}

void Panel::add_x_axis_at(const QString& title, const std::vector<double>& values) {
    for (double value : values) add_x_tick({.value = value, .label = number_text(value)}, true);
    add_x_title(title);
}

void Panel::add_x_tick(const Tick& tick, bool with_label) {
    const QPointF foot(x_at(tick.value), plot_.bottom());
    add_grid_line(foot, {foot.x(), plot_.top()});
    scene_->addLine(QLineF(foot, foot + QPointF(0, tick_length)), style::pen(style::ink, 1.0));
    if (!with_label) return;
    add_text(*scene_, QString::fromStdString(tick.label), foot + QPointF(0, tick_length + 2), Hold::centre_top,
             tick_text);
}

void Panel::add_x_title(const QString& title) {
    if (!title.isEmpty()) add_text(*scene_, title, {plot_.center().x(), plot_.bottom() + 28.0}, Hold::centre_top, {});
}

void Panel::add_y_axis(const QString& title, double title_x) {
    const TickRoom room{.pixels = plot_.height(), .least_apart = y_ticks_apart};
    for (const Tick& tick : ticks(y_, room)) {
        const QPointF foot(plot_.left(), y_at(tick.value));
        add_grid_line(foot, {plot_.right(), foot.y()});
        scene_->addLine(QLineF(foot, foot - QPointF(tick_length, 0)), style::pen(style::ink, 1.0));
        add_text(*scene_, QString::fromStdString(tick.label), foot - QPointF(tick_length + 4, 0), Hold::right_middle,
                 tick_text);
    }
    // a title longer than its axis takes a second line
    const QStringList lines = wrapped(title, plot_.height() + 8.0, {}, 2);
    double x = title_x - 9.0 * static_cast<double>(lines.size() - 1);
    for (const QString& line : lines) {
        add_upright_text(*scene_, line, {x, plot_.center().y()});
        x += line_height({});
    }
}

void Panel::add_line(const Polyline& values, const LineStyle& style) {
    Polyline measured;
    for (const Place& value : values)
        if (x_.shows(value.x) && y_.shows(value.y)) measured.push_back({x_.along(value.x), y_.along(value.y)});
    const Box box{
        .left = x_.along(x_.low), .right = x_.along(x_.high), .low = y_.along(y_.low), .high = y_.along(y_.high)};
    for (const Polyline& piece : clipped(measured, box)) {
        if (style.halo) add_series(*chart_, piece, style::pen(Qt::white, style.pen.widthF() + 2.0));
        add_series(*chart_, piece, style.pen);
    }
}

void Panel::add_upright_line(double x, const QPen& pen) { add_line({{x, y_.low}, {x, y_.high}}, {.pen = pen}); }

void Panel::add_level_line(double y, const QPen& pen) { add_line({{x_.low, y}, {x_.high, y}}, {.pen = pen}); }

void Panel::add_strip(double from, double to, const QColor& tint, const Hatch& hatch) {
    const double left = std::clamp(x_at(from), plot_.left(), plot_.right());
    const double right = std::clamp(x_at(to), plot_.left(), plot_.right());
    if (right > left)
        add_hatched_box(*scene_, QRectF(QPointF(left, plot_.top()), QPointF(right, plot_.bottom())), tint, hatch);
}

void Panel::add_marks(const Polyline& values, const MarkStyle& style) {
    QList<QPointF> places;
    for (const Place& value : values)
        if (holds(value.x, value.y)) places.append(at(value.x, value.y));
    charts::add_marks(*scene_, places, style);
}

}  // namespace gui::charts
