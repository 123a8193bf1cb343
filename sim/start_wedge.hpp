// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/start_map.hpp"

#include <optional>
#include <string>
#include <vector>

namespace sim {

/// Neighbouring cells that begin cleanly, along a column (forces) or a row (paces).  An edge lies in the middle, in
/// ratio, between the last clean cell and the next; an open one at the map's end, as nobody looked further.
struct StartInterval {
    double low = 0.0;  ///< N, or the unit of the pace
    double high = 0.0;
    bool low_open = false;
    bool high_open = false;
    int cells = 0;

    bool operator==(const StartInterval&) const = default;
};
struct StartIntervals {
    std::vector<StartInterval> all;   ///< rising
    std::optional<std::size_t> main;  ///< the one with the most cells, of equals the lower; nothing clean: none

    const StartInterval* chosen() const { return main ? &all[*main] : nullptr; }
    bool operator==(const StartIntervals&) const = default;
};

/// Forces that begin cleanly at one pace.
struct WedgeColumn {
    double pace = 0.0;
    StartIntervals forces;

    bool operator==(const WedgeColumn&) const = default;
};

/// How an edge of the wedge runs: force goes as pace to this power; least squares in logarithms.
struct EdgeSlope {
    double power = 0.0;
    int columns = 0;  ///< with a main interval whose edge is not open; 3 or more

    bool operator==(const EdgeSlope&) const = default;
};

/// Where beginnings are clean under one limit.
struct Wedge {
    StartLimit limit = StartLimit::strict;
    std::vector<WedgeColumn> columns;  ///< one a pace of the map
    std::optional<EdgeSlope> low_edge;
    std::optional<EdgeSlope> high_edge;
    double middle_force = 0.0;        ///< N, the map's force nearest the asked one
    StartIntervals middle_paces;      ///< paces that begin cleanly at that force
    std::optional<double> best_pace;  ///< the middle, in ratio, of the main of these
    int clean_cells = 0;
    int unsure_cells = 0;  ///< whose runs did not all vote alike

    bool operator==(const Wedge&) const = default;
};
Wedge find_wedge(const StartMap& map, StartLimit limit, double middle_force);

/// All that `start` answers.
struct StartAnswer {
    StartMap map;
    Wedge strict;
    Wedge lenient;
};
StartAnswer find_start(const Note& note, const StartPlan& plan, double middle_force, const Workers& workers);

/// A plain sentence or two: how quickly to begin at the middle force, or why that can't be said.
std::string wedge_in_words(const StartMap& map, const Wedge& wedge);

}  // namespace sim
