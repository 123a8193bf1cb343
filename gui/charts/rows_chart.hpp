// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/interval_chart.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

/// What one panel says of one row.
struct RowBar {
    std::optional<Interval> range;
    std::optional<double> mark;  ///< drawn across the bar
    bool weak = false;           ///< in outline only

    bool operator==(const RowBar&) const = default;
};

/// One quantity of every row, over an axis of its own.
struct RowPanel {
    std::string title;
    std::string x_title;       ///< with its unit
    bool logarithmic = false;  ///< else the axis begins at 0
    bool amount = false;       ///< bars are amounts from 0, in another look than ranges
    std::vector<RowBar> bars;  ///< as many as rows

    bool operator==(const RowPanel&) const = default;
};

/// Panels side by side, the same rows in each, from the top down.
struct RowsChart {
    std::string title;
    std::string subtitle;
    std::vector<std::string> names;  ///< of the rows
    std::vector<RowPanel> panels;
    // legend; what is empty is left out
    std::string range_name;
    std::string weak_name;
    std::string mark_name;
    std::string amount_name;
    std::string amount_mark_name;
    std::string missing_name;
    std::vector<std::string> notes;
    std::vector<std::string> warnings;  ///< notes before all others, in bold

    bool operator==(const RowsChart&) const = default;
};

}  // namespace gui::charts
