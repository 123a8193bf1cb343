// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/selection.hpp"

#include <vector>

namespace gui {

/// The drawn string: places on it (m from the bridge) against places across the picture (px from its left).
struct StageScale {
    double left = 0.0;    ///< px, of the far end
    double right = 0.0;   ///< px, of the bridge
    double length = 1.0;  ///< m, shown between the two

    double x(double from_bridge) const { return right - from_bridge * pixels_per_metre(); }
    double from_bridge(double x) const { return (right - x) / pixels_per_metre(); }
    double pixels_per_metre() const { return (right - left) / length; }

    bool operator==(const StageScale&) const = default;
};

/// Force up and down the pad, evenly in ratio (px from its top).
struct ForceScale {
    double top = 0.0;       ///< px, of the firmest
    double bottom = 0.0;    ///< px, of the lightest
    double lightest = 1.0;  ///< N
    double firmest = 2.0;   ///< N

    double y(double force) const;
    double force(double y) const;
};

/// A cross line on the drawn string.
struct StageMark {
    enum class Kind { nut, fret, guide_fret, board_end, bridge };
    Kind kind = Kind::fret;
    int number = 0;            ///< of a fret
    double from_bridge = 0.0;  ///< m
};

/// Nut, frets, guide fret, end of the board and bridge of the selected string, from the nut on.
std::vector<StageMark> stage_marks(const Selection& selection);

/// Where the fingerboard ends, m from the bridge.
double board_end(const Selection& selection);

/// How much of the string by the bridge the pad shows, m: as far as a bow may stand, and no less than a hand's breadth.
double pad_length(const Selection& selection);

/// Round steps for a ruler of this length (m), rising, from 0: so many that neighbours stand `least_apart` px apart.
std::vector<double> ruler_steps(const StageScale& scale, double least_apart);

/// Between the cells of the pad: halfway, in ratio, to either neighbour; one more than there are values.
std::vector<double> cell_edges(const std::vector<double>& values);

/// Share of black in what a force looks like on the drawn bow: 0 lightest … 1 firmest.
double force_share(const Selection& selection);

}  // namespace gui
