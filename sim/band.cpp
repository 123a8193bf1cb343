// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/security.hpp"

#include "sim/text.hpp"

#include <algorithm>
#include <cmath>

namespace sim {

namespace {

constexpr int curve_points = 400;           // of the security curve, even in ratio
constexpr double best_margin = 1.0 / 24.0;  // of security, under the greatest
constexpr double least_security = 1e-9;

using Curve = std::vector<Security>;

/// Where the security passes `share` between two neighbours of the curve, straight in log distance.
double crossing(const Security& a, const Security& b, double share) {
    const double part = (share - a.security) / (b.security - a.security);
    return a.contact_point * std::pow(b.contact_point / a.contact_point, part);
}

/// The commonest fault a little beyond an edge: what stops the player from going on.
Fault bound_at(const Curve& curve, std::size_t outside) { return curve[outside].fails_by; }

struct Stretch {
    std::size_t first;
    std::size_t last;
};

std::vector<Stretch> stretches_over(const Curve& curve, double share) {
    std::vector<Stretch> found;
    for (std::size_t i = 0; i < curve.size(); ++i) {
        if (curve[i].security < share) continue;
        std::size_t last = i;
        while (last + 1 < curve.size() && curve[last + 1].security >= share) ++last;
        found.push_back({i, last});
        i = last;
    }
    return found;
}

Band band_of(const Curve& curve, const Stretch& s, double share) {
    Band band{.near = curve[s.first].contact_point, .far = curve[s.last].contact_point};
    band.near_bound = Fault::under_floor;
    band.far_bound = Fault::past_finger;
    if (s.first > 0) {
        band.near = crossing(curve[s.first - 1], curve[s.first], share);
        band.near_bound = bound_at(curve, s.first - 1);
    }
    if (s.last + 1 < curve.size()) {
        band.far = crossing(curve[s.last], curve[s.last + 1], share);
        band.far_bound = bound_at(curve, s.last + 1);
    }
    return band;
}

std::string no_band_reason(const Security& best, const Player& player) {
    if (best.security <= least_security)
        return "no stroke of the range speaks and keeps its tone anywhere; mostly " +
               std::string(fault_name(best.fails_by));
    return "at best " + percent_words(best.security) + " of strokes speak and keep their tone, the band asks " +
           percent_words(player.band_share) + "; the rest: " + std::string(fault_name(best.fails_by));
}

/// The place that most nearly speaks, for the reason's sake where nothing is secure.
const Security& nearest_to_speaking(const Curve& curve) {
    return *std::ranges::max_element(curve, {}, &Security::speaks_share);
}

}  // namespace

BandResult find_band(const Assessment& assessment, const StrokeMap& map, const Player& player) {
    Curve curve;
    for (double point : even_in_ratio({map.contact_points.front(), map.contact_points.back()}, curve_points))
        curve.push_back(assessment.at(point));
    const auto top = std::ranges::max_element(curve, {}, &Security::security);
    BandResult result;
    if (top->security <= least_security) {
        const Security& nearest = nearest_to_speaking(curve);
        if (nearest.speaks_share > 0.0) result.best = nearest.contact_point;
        result.at_best = nearest;
        result.reason = no_band_reason(nearest, player);
        return result;
    }
    std::size_t first = static_cast<std::size_t>(top - curve.begin());
    std::size_t last = first;
    while (first > 0 && curve[first - 1].security >= top->security - best_margin) --first;
    while (last + 1 < curve.size() && curve[last + 1].security >= top->security - best_margin) ++last;
    result.best = std::sqrt(curve[first].contact_point * curve[last].contact_point);
    result.at_best = assessment.at(*result.best);
    const auto holds_best = [&](const Band& band) { return band.near <= *result.best && *result.best <= band.far; };
    for (const Stretch& stretch : stretches_over(curve, player.band_share)) {
        const Band band = band_of(curve, stretch, player.band_share);
        if (holds_best(band))
            result.band = band;
        else
            result.other_bands.push_back(band);
    }
    const double relative = player.band_share * top->security;
    for (const Stretch& stretch : stretches_over(curve, relative)) {
        const Band around = band_of(curve, stretch, relative);
        if (holds_best(around)) result.stretch = around;
    }
    if (!result.band) result.reason = no_band_reason(result.at_best, player);
    return result;
}

BandResult find_band(const Note& note, const Player& player, const MapGrid& grid, const Workers& workers) {
    const StrokeMap map = started_map(note, player, grid, workers);
    return find_band(Assessment(map, player), map, player);
}

}  // namespace sim
