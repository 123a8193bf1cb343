// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/marks.hpp"
#include "gui/charts/sweep_chart.hpp"

#include <QPen>

#include <vector>

class QGraphicsScene;

namespace gui::charts {

class Panel;

struct SeriesLook {
    QPen pen;
    MarkStyle mark;
};

/// Colour, dashes and shape all change from one series to the next.
SeriesLook series_look(std::size_t index);

/// The cross on the axis where a series has no value.
MarkStyle missing_mark(const QColor& colour);
inline constexpr double missing_height = 15.0;  ///< px that a row of crosses takes

bool has_value(const SweepPoint& point);

/// A series' line, broken where a value is missing, with its marks if wanted; crosses for what is missing stand `foot`
/// px down the sheet.
struct BrokenLine {
    std::vector<SweepPoint> points;
    SeriesLook look;
    bool with_markers = true;
    double foot = 0.0;  ///< px
};
void draw_broken_line(const BrokenLine& line, Panel& panel, QGraphicsScene& scene);

}  // namespace gui::charts
