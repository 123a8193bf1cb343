// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/recording.hpp"
#include "sim/match/heard_levels.hpp"
#include "sim/match/region.hpp"

#include <span>
#include <string>

/// Why nothing is said of a note, each a plain phrase; empty where there is no reason.
namespace sim::match {

/// Of its sound alone: no pitch, too short, two notes at once, clipped, a motion that is not Helmholtz's.
std::string doubt_of_sound(const analysis::RecordedNote& note);

inline constexpr int least_partials = 8;
/// Of its partials: fewer than that stand out of the noise.
std::string doubt_of_partials(std::span<const HeardLevel> heard);

/// Of what was found: no stroke fits, or the region is nearly all that was possible.
struct Finding {
    double misfit;
    Region contact;
    Region possible;
};
std::string doubt_of_finding(const Finding& finding);

}  // namespace sim::match
