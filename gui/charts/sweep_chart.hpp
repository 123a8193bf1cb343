// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

struct SweepAxis {
    std::string title;         ///< with its unit: "wander, mm"
    bool logarithmic = false;  ///< values at or below 0 are then left out

    bool operator==(const SweepAxis&) const = default;
};

struct SweepPoint {
    double x = 0.0;
    std::optional<double> y;  ///< none: nothing there, marked by a cross on the x axis; the line is broken

    bool operator==(const SweepPoint&) const = default;
};

/// One named line; lines differ in colour, dashes and marker shape.
struct SweepSeries {
    std::string name;
    std::vector<SweepPoint> points;  ///< in the order of drawing
    bool with_markers = true;

    bool operator==(const SweepSeries&) const = default;
};

/// Lines against one quantity.
struct SweepChart {
    std::string title;
    std::string subtitle;
    SweepAxis x;
    SweepAxis y;
    std::vector<SweepSeries> series;
    std::string missing_name;  ///< legend of the cross where a point has no y; empty: "no value"
    std::vector<std::string> notes;

    bool operator==(const SweepChart&) const = default;
};

}  // namespace gui::charts
