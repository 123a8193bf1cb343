// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>

namespace sim::kernel {

/// Forces of points that rub and feel each other at once: slip = free slip + yield * forces.  A point sticks, its slip
/// 0 and its force no greater than it bears, or slides with all it bears against the slip.
///
/// That is the least of forces (yield * forces / 2 + free slip) among forces that are borne; a convex problem, found by
/// steps to where all that stick have no slip, each as far as the first that slides, until none that slides wants to
/// stick.  Where points share so few samples that the yield is singular, the slips and the waves sent out are one all
/// the same, and which of the forces that give them comes out doesn't matter.
///
/// promise  no heap, no locks, no throw
class JointForces {
public:
    static constexpr std::size_t most_points = 16;
    using Values = std::array<double, most_points>;  ///< one a point

    struct Rubbing {
        std::size_t points = 0;
        std::array<Values, most_points> yield{};  ///< m/s per N, of each point to each push; symmetric, no power given
        Values free_slip{};                       ///< m/s
        Values bears{};                           ///< N, > 0
    };
    /// From a first guess.
    static void settle(const Rubbing& rubbing, Values& forces);
    static Values slips(const Rubbing& rubbing, const Values& forces);  ///< m/s
};

}  // namespace sim::kernel
