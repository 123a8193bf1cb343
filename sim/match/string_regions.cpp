// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/string_regions.hpp"

#include <algorithm>

namespace sim::match {
namespace {

/// Weights of one string's strokes summed over what is not asked for.
struct Sums {
    std::vector<double> contact;
    std::vector<double> force;
};
/// Half stays, a quarter goes to either neighbour.
std::vector<double> spread_to_neighbours(const std::vector<double>& weights) {
    std::vector<double> spread(weights.size());
    const std::size_t last = weights.size() - 1;
    for (std::size_t x = 0; x < weights.size(); ++x) {
        spread[x] += 0.5 * weights[x];
        spread[x > 0 ? x - 1 : x] += 0.25 * weights[x];
        spread[std::min(x + 1, last)] += 0.25 * weights[x];
    }
    return spread;
}

Sums summed(const PlayedStop& stop, std::span<const double> weights) {
    Sums sums{std::vector<double>(stop.spectra.contact_points.size()), std::vector<double>(stop.spectra.forces.size())};
    for (std::size_t s = 0; s < weights.size(); ++s) {
        sums.contact[stop.strokes[s].contact] += weights[s];
        sums.force[stop.strokes[s].force] += weights[s];
    }
    return {spread_to_neighbours(sums.contact), spread_to_neighbours(sums.force)};
}

}  // namespace

std::optional<StrokeRegion> stroke_region(const PlayedStop& stop, std::span<const double> weights, double share) {
    double sum = 0.0;
    for (const double weight : weights) sum += weight;
    if (!(sum > 0.0)) return std::nullopt;
    const Sums sums = summed(stop, weights);
    const std::vector<double>& contacts = stop.spectra.contact_points;
    const auto best = static_cast<std::size_t>(std::ranges::max_element(weights) - weights.begin());
    StrokeRegion region{.contact = shortest_region(contacts, sums.contact, share),
                        .contact_all = {contacts[stop.strokes.front().contact], contacts[stop.strokes.back().contact]},
                        .force = shortest_region(stop.spectra.forces, sums.force, share),
                        .best_contact = contacts[stop.strokes[best].contact],
                        .best_force = stop.spectra.forces[stop.strokes[best].force],
                        .contact_points = contacts,
                        .density = sums.contact};
    for (double& density : region.density) density /= sum;
    return region;
}

Region ratio_region(std::span<const StringMatch> strings, double share) {
    constexpr int places = 400;
    double low = 1.0;
    double high = 0.0;
    for (const StringMatch& string : strings) {
        if (!string.region) continue;
        low = std::min(low, string.region->contact_points.front() / string.place.note.string.length);
        high = std::max(high, string.region->contact_points.back() / string.place.note.string.length);
    }
    const std::vector<double> ratios = even_in_ratio({low, high}, places);
    std::vector<double> weights(places, 0.0);
    for (const StringMatch& string : strings) {
        if (!string.region) continue;
        std::vector<double> own = string.region->contact_points;
        for (double& place : own) place /= string.place.note.string.length;
        const std::vector<double> moved = moved_weights(own, string.region->density, ratios);
        for (std::size_t k = 0; k < weights.size(); ++k) weights[k] += string.share * moved[k];
    }
    return shortest_region(ratios, weights, share);
}

}  // namespace sim::match
