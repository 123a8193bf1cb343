// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/hand.hpp"

#include <vector>

namespace sim::passage {

/// One way through the tune.
struct HandWay {
    std::vector<HandState> states;  ///< one a note
    double cost = 0.0;

    bool operator==(const HandWay&) const = default;
};

/// The cheapest way, and after it other ways, each the cheapest through some string and hand place of some note that
/// differs from all before it: on `least_apart` notes or more by the string, or by finger and hand place.  Shortest
/// paths through the layers of a graph, forwards and backwards; of equals the first in the order of strings, fingers
/// and places.  Empty where some note can't be reached.
std::vector<HandWay> best_ways(const Hand& hand, int ways, int least_apart);

/// What a way costs, added up note by note; nothing if it can't be played.
std::optional<double> cost_of(const Hand& hand, const std::vector<HandState>& states);

}  // namespace sim::passage
