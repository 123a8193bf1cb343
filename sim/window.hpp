// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/force_window.hpp"
#include "sim/limits.hpp"
#include "sim/security.hpp"

#include <optional>
#include <vector>

namespace sim {

/// How much of a window to work out.
struct WindowPlan {
    MapGrid grid{.contact_points = 40, .player_forces = 12, .more_forces = 6};
    std::optional<double> near_limit;  ///< m, points only from here …
    std::optional<double> far_limit;   ///< … to here; the band is always sought over the whole string
    int held_points = 6;  ///< contact points at which the held window is found too, even in ratio; 0 = none
};

/// One contact point of a note's window.
struct WindowPoint {
    Security security;
    double contact_ratio = 0.0;
    ForceWindow speaking;             ///< started; edges to 2 %
    std::optional<ForceWindow> held;  ///< where it was asked for
    Limits limits;
    StrokeResult middle;  ///< the stroke of the map nearest the middle of the player's range
};

/// The window of one note.
struct Window {
    StrokeMap map;
    std::vector<Fault> faults;        ///< one a stroke of the map
    std::vector<WindowPoint> points;  ///< rising
    BandResult band;
};

Window find_window(const Note& note, const Player& player, const WindowPlan& plan, const Workers& workers);

/// "I bow here": what one contact point is worth and what to change.
struct HereResult {
    WindowPoint point;
    BandResult band;
    std::optional<double> from_near;  ///< m past the near edge of the band, negative on the bridge's side of it
    std::optional<double> from_far;   ///< m short of the far edge, negative beyond it
    std::string advice;               ///< one plain sentence
};
HereResult bow_here(const Note& note, const Player& player, double contact_point, const WindowPlan& plan,
                    const Workers& workers);

/// Forgiveness of a window, dB: 20 log10(force_max / force_min) of its main interval.
std::optional<double> forgiveness(const ForceWindow& window);

}  // namespace sim
