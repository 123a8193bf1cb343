// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

/// What one change, either way, does to one quantity: changed over nominal, > 0; none: no value, marked by a cross.
struct TornadoBar {
    std::optional<double> up;
    std::optional<double> down;

    bool operator==(const TornadoBar&) const = default;
};

/// One quantity: bars from 1 to where the change takes it, on a logarithmic axis.
struct TornadoPanel {
    std::string title;                ///< "best place at the octave"
    std::optional<TornadoBar> noise;  ///< shaded between its ends and 1: what is smaller says nothing

    bool operator==(const TornadoPanel&) const = default;
};

struct TornadoRow {
    std::string name;
    std::vector<TornadoBar> bars;  ///< as many as panels

    bool operator==(const TornadoRow&) const = default;
};

/// Horizontal bars of what every change does, in the order given from the top down.
struct TornadoChart {
    std::string title;
    std::string subtitle;
    std::string up_name;    ///< legend: "times 1.5"
    std::string down_name;  ///< legend: "divided by 1.5"
    std::string noise_name;
    std::string missing_name;
    std::vector<TornadoPanel> panels;
    std::vector<TornadoRow> rows;
    std::vector<std::string> notes;

    bool operator==(const TornadoChart&) const = default;
};

}  // namespace gui::charts
