// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/climb_chart.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

/// One note of a passage.
struct PassageNote {
    double from_s = 0.0;
    double to_s = 0.0;
    std::string name;      ///< "C#4"
    int finger = 0;        ///< 0 = open … 4
    double stop_mm = 0.0;  ///< from the nut
    std::optional<double> best_mm;
    std::optional<ClimbBand> band;
    std::optional<ClimbBand> stretch;  ///< drawn only where there is no band
    bool follows_fails = false;        ///< not Helmholtz motion as simulated, the bow following …
    bool behind_fails = false;         ///< … and left behind

    bool operator==(const PassageNote&) const = default;
};

/// Where the hand stands for some of the notes.
struct PassageHandPlace {
    double from_s = 0.0;
    double to_s = 0.0;
    std::string name;  ///< "fret 2"

    bool operator==(const PassageHandPlace&) const = default;
};

struct PassagePathPoint {
    double time_s = 0.0;
    double contact_mm = 0.0;

    bool operator==(const PassagePathPoint&) const = default;
};

/// A passage over time: names, hand places as brackets and stops above, contact bands and the bow's path below.
///
/// Notes rise in time; past the first 60 they are not drawn, which is said.
struct PassageChart {
    std::string title;
    std::string subtitle;
    std::vector<PassageNote> notes;
    std::vector<PassageHandPlace> hand_places;
    std::vector<PassagePathPoint> path;
    std::optional<double> left_behind_mm;
    std::vector<std::string> remarks;  ///< sentences beside the chart

    bool operator==(const PassageChart&) const = default;
};

}  // namespace gui::charts
