// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/sweep_chart.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

/// A value, and how far around it something reaches.
struct StackPoint {
    double x = 0.0;
    std::optional<double> y;    ///< none: nothing there, marked by a cross on the x axis; the line is broken
    std::optional<double> low;  ///< with `high` a bar beside the mark
    std::optional<double> high;
    bool weak = false;  ///< the bar is drawn thin and dashed

    bool operator==(const StackPoint&) const = default;
};

/// One plot of a stack; a line for each of the chart's names, in their order.
struct StackPanel {
    std::string title;  ///< above the plot; may be empty
    SweepAxis y;
    std::vector<std::vector<StackPoint>> lines;

    bool operator==(const StackPanel&) const = default;
};

/// Plots below one another over one quantity; each named line has the same colour, dashes and mark in all of them.
struct StackChart {
    std::string title;
    std::string subtitle;
    SweepAxis x;
    double least_x_step = 0.0;       ///< of the ticks, e.g. 1 for whole semitones
    std::vector<std::string> names;  ///< of the lines
    std::vector<StackPanel> panels;  ///< up to four are readable
    std::string bar_name;            ///< in the legend, where there are bars
    std::string weak_bar_name;
    std::string missing_name;  ///< as in SweepChart
    std::vector<std::string> notes;

    bool operator==(const StackChart&) const = default;
};

}  // namespace gui::charts
