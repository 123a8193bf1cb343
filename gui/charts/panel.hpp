// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/clip.hpp"
#include "gui/charts/marks.hpp"
#include "gui/charts/scale.hpp"
#include "gui/charts/text.hpp"

#include <QPen>
#include <QRectF>

#include <vector>

class QChart;
class QGraphicsScene;

namespace gui::charts {

/// Parallel strokes that tell areas apart without colour.
struct Hatch {
    QPen pen;
    double apart = 8.0;  ///< px
    bool rising = true;  ///< from lower left to upper right

    bool operator==(const Hatch&) const = default;
};
void add_hatch(QGraphicsScene& scene, const QRectF& place, const Hatch& hatch, double layer);
/// A tint below everything, and its strokes above it.
void add_hatched_box(QGraphicsScene& scene, const QRectF& place, const QColor& tint, const Hatch& hatch);

/// A line over several passes: pieces of it that lie outside the axes are cut off.
struct LineStyle {
    QPen pen;
    bool halo = false;  ///< white rim, to stand off from marks below
};

/// One plot: axes with their ticks, and what is drawn between them.  Values, not pixels, go in.
class Panel {
public:
    Panel(QGraphicsScene& scene, const QRectF& plot, const Scale& x, const Scale& y);

    const QRectF& plot() const { return plot_; }
    const Scale& x() const { return x_; }
    const Scale& y() const { return y_; }
    QPointF at(double x, double y) const { return {x_at(x), y_at(y)}; }
    double x_at(double x) const;
    double y_at(double y) const;
    /// Can be drawn, and lies between the axes' ends.
    bool holds(double x, double y) const;

    /// Ticks, grid and title; without labels where a panel below has the same axis.
    void add_x_axis(const QString& title, bool with_labels = true, double least_step = 0.0);
    /// Ticks at these values alone.
    void add_x_axis_at(const QString& title, const std::vector<double>& values);
    void add_y_axis(const QString& title, double title_x = style::margin + 4.0);
    void add_line(const Polyline& values, const LineStyle& style);
    void add_upright_line(double x, const QPen& pen);
    void add_level_line(double y, const QPen& pen);
    /// From bottom to top between two values of x.
    void add_strip(double from, double to, const QColor& tint, const Hatch& hatch);
    void add_marks(const Polyline& values, const MarkStyle& style);

private:
    void add_x_tick(const Tick& tick, bool with_label);
    void add_x_title(const QString& title);
    void add_grid_line(QPointF from, QPointF to);

    QGraphicsScene* scene_;
    QRectF plot_;
    Scale x_;
    Scale y_;
    QChart* chart_;
};

}  // namespace gui::charts
