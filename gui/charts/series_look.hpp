// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/marks.hpp"

#include <QPen>

namespace gui::charts {

struct SeriesLook {
    QPen pen;
    MarkStyle mark;
};

/// Colour, dashes and shape all change from one series to the next.
SeriesLook series_look(std::size_t index);

/// The cross on the axis where a series has no value.
MarkStyle missing_mark(const QColor& colour);
inline constexpr double missing_height = 15.0;  ///< px that a row of crosses takes

}  // namespace gui::charts
