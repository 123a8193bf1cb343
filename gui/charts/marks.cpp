// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/marks.hpp"

#include <QGraphicsPathItem>
#include <QGraphicsScene>
#include <QTransform>

#include <algorithm>

namespace gui::charts {
namespace {

QPainterPath polygon(const QList<QPointF>& corners, double radius) {
    QPainterPath path;
    path.moveTo(corners.front() * radius);
    for (const QPointF& corner : corners.mid(1)) path.lineTo(corner * radius);
    path.closeSubpath();
    return path;
}

QPainterPath circle(double radius) {
    QPainterPath path;
    path.addEllipse(QPointF(0, 0), radius, radius);
    return path;
}

/// What lies between two outlines of one direction.  By the winding rule, under which marks that touch don't cancel.
QPainterPath between(QPainterPath outer, const QPainterPath& inner) {
    outer.addPath(inner.toReversed());
    return outer;
}

QPainterPath right_half(double radius) {
    QPainterPath path;
    path.moveTo(0, -radius);
    path.arcTo(QRectF(-radius, -radius, 2 * radius, 2 * radius), 90, -180);
    path.closeSubpath();
    return path;
}

QPainterPath diagonals(double radius, double line) {
    QPainterPath bar;
    bar.addRect(-radius * 1.3, -line / 2.0, radius * 2.6, line);
    QPainterPath path = QTransform().rotate(45).map(bar);
    path.addPath(QTransform().rotate(-45).map(bar));
    return path;
}

const QList<QPointF> upward{{0.0, -1.0}, {0.95, 0.75}, {-0.95, 0.75}};
const QList<QPointF> downward{{0.0, 1.0}, {0.95, -0.75}, {-0.95, -0.75}};
const QList<QPointF> tilted{{0.0, -1.0}, {1.0, 0.0}, {0.0, 1.0}, {-1.0, 0.0}};
const QList<QPointF> upright{{-0.82, -0.82}, {0.82, -0.82}, {0.82, 0.82}, {-0.82, 0.82}};

}  // namespace

QPainterPath mark_path(MarkShape shape, double size) {
    const double radius = size / 2.0;
    const double line = std::clamp(size / 6.5, 0.9, 2.0);
    const double inner = radius - line;
    const auto open = [&](const QList<QPointF>& corners, double slope) {
        return between(polygon(corners, radius), polygon(corners, radius - slope * line));
    };
    QPainterPath path;
    switch (shape) {
        case MarkShape::disc:
            path = circle(radius);
            break;
        case MarkShape::half_disc:
            path = between(circle(radius), circle(inner));
            path.addPath(right_half(radius));
            break;
        case MarkShape::ring:
            path = between(circle(radius), circle(inner));
            break;
        case MarkShape::triangle:
            path = polygon(upward, radius);
            break;
        case MarkShape::triangle_down:
            path = polygon(downward, radius);
            break;
        case MarkShape::open_triangle_down:
            path = open(downward, 1.8);
            break;
        case MarkShape::open_diamond:
            path = open(tilted, 1.4);
            break;
        case MarkShape::diamond:
            path = polygon(tilted, radius);
            break;
        case MarkShape::cross:
            path = diagonals(0.8 * radius, line);
            break;
        case MarkShape::dot:
            path = circle(0.28 * radius);
            break;
        case MarkShape::square:
            path = polygon(upright, radius);
            break;
        case MarkShape::open_square:
            path = open(upright, 1.2);
            break;
        case MarkShape::crossed_square:
            path = open(upright, 1.2);
            path.addPath(diagonals(0.66 * inner, line));
            break;
    }
    path.setFillRule(Qt::WindingFill);
    return path;
}

void add_marks(QGraphicsScene& scene, const QList<QPointF>& places, const MarkStyle& style) {
    if (places.isEmpty()) return;
    const QPainterPath one = mark_path(style.shape, style.size);
    QPainterPath all;
    all.setFillRule(Qt::WindingFill);
    for (const QPointF& place : places) all.addPath(one.translated(place));
    QGraphicsPathItem* item = scene.addPath(all, Qt::NoPen, style.colour);
    item->setZValue(style.layer);
}

}  // namespace gui::charts
