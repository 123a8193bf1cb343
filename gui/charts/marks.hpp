// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QList>
#include <QPainterPath>
#include <QPointF>

class QGraphicsScene;

namespace gui::charts {

enum class MarkShape {
    disc,
    half_disc,
    ring,
    triangle,
    open_triangle_down,
    open_diamond,
    cross,
    dot,
    square,
    open_square,
    crossed_square,
    diamond,
    triangle_down
};

struct MarkStyle {
    MarkShape shape = MarkShape::disc;
    QColor colour;
    double size = 10.0;  ///< px across
    double layer = 0.0;
};

/// The shape about (0, 0), to be filled; outlines are part of it.
QPainterPath mark_path(MarkShape shape, double size);

/// All marks of one kind, as one item.
void add_marks(QGraphicsScene& scene, const QList<QPointF>& places, const MarkStyle& style);

}  // namespace gui::charts
