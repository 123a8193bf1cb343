// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/match/modelled_strokes.hpp"
#include "sim/match/region.hpp"
#include "sim/match/stop_candidates.hpp"

#include <optional>
#include <span>
#include <vector>

namespace sim::match {

/// The strokes of one stop of one string.
struct PlayedStop {
    StrokeSpectra spectra;
    std::vector<ModelledStroke> strokes;
};

/// Where and how firmly, as a region.
struct StrokeRegion {
    Region contact;                      ///< m from the bridge
    Region contact_all;                  ///< m, where any stroke compared lies: what was thought possible before
    Region force;                        ///< N, at the player's speed
    double best_contact = 0.0;           ///< m, of the likeliest stroke
    double best_force = 0.0;             ///< N
    std::vector<double> contact_points;  ///< m
    std::vector<double> density;         ///< share of the likelihood at each of these, sum 1
};

/// One string that a note may be on.
struct StringMatch {
    StopCandidate place;
    double share = 0.0;                  ///< of the likelihood over all strings
    std::optional<StrokeRegion> region;  ///< none where no stroke of the player's speaks there
};

/// The regions with `share` of the weights of a stop's strokes; nothing where they are all 0.
///
/// A stroke speaks for its contact point and force and, less and less, for what lies up to their neighbours: between
/// them nothing was played.
std::optional<StrokeRegion> stroke_region(const PlayedStop& stop, std::span<const double> weights, double share);

/// The region of the contact ratio over all strings, each by its share.
Region ratio_region(std::span<const StringMatch> strings, double share);

}  // namespace sim::match
