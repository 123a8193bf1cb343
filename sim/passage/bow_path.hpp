// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

namespace sim::passage {

/// A stretch of time over which the bow moves evenly from one place to another.
struct PathStretch {
    double duration = 0.0;  ///< s, > 0
    double limit = 0.0;     ///< m/s that the bow may travel sideways, >= 0
    int worth = -1;         ///< index into PathProblem::worths: the note that sounds; -1 = none does
    double weight = 0.0;    ///< of its mean worth in the whole

    bool operator==(const PathStretch&) const = default;
};

/// Where is the bow to be at each moment?
struct PathProblem {
    std::vector<double> places;               ///< m, rising, evenly apart, two or more, fewer than 65536
    std::vector<std::vector<double>> worths;  ///< one a place each; straight between places
    std::vector<PathStretch> stretches;       ///< in time
    double travel_cost = 0.0;                 ///< per m of way, >= 0

    bool operator==(const PathProblem&) const = default;
};

/// Index of the place at the beginning of each stretch, and at the end of the last.
using BowPath = std::vector<std::size_t>;

/// The path of greatest value among all that keep to the limits and turn at places of the grid: a longest path through
/// places and moments, by dynamic programming.  Of equal ones the one that moves least at the end of each stretch.
BowPath find_path(const PathProblem& problem);

/// Sum over the stretches of weight times the mean worth along the way, less the cost of the way.
double path_value(const PathProblem& problem, const BowPath& path);

/// How many places a path may go on in that stretch.
std::size_t places_within(const PathProblem& problem, const PathStretch& stretch);

}  // namespace sim::passage
