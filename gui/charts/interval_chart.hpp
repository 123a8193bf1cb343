// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

struct Interval {
    double low = 0.0;
    double high = 0.0;

    bool operator==(const Interval&) const = default;
};

/// What one series says at one place of the x axis: a wide interval (thin line) and one that stands before it (thick).
struct IntervalPair {
    double x = 0.0;
    std::optional<Interval> thin;
    std::optional<Interval> thick;

    bool operator==(const IntervalPair&) const = default;
};
struct IntervalSeries {
    std::string name;
    std::vector<IntervalPair> pairs;

    bool operator==(const IntervalSeries&) const = default;
};

/// Intervals of several series side by side at each place, on a logarithmic axis.
struct IntervalChart {
    std::string title;
    std::string subtitle;
    std::string x_title;  ///< with its unit
    std::string y_title;
    std::string thin_name;
    std::string thick_name;
    std::vector<IntervalSeries> series;
    std::vector<std::string> notes;

    bool operator==(const IntervalChart&) const = default;
};

}  // namespace gui::charts
