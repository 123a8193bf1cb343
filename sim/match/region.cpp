// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/region.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace sim::match {
namespace {

/// Weight up to each edge between values, and where the edges lie (ln).
struct Cumulated {
    std::vector<double> edges;
    std::vector<double> weight;

    /// Weight up to a place.
    double up_to(double place) const {
        if (place <= edges.front()) return 0.0;
        std::size_t k = 1;
        while (k + 1 < edges.size() && edges[k] < place) ++k;
        const double part = std::clamp((place - edges[k - 1]) / (edges[k] - edges[k - 1]), 0.0, 1.0);
        return weight[k - 1] + part * (weight[k] - weight[k - 1]);
    }

    /// Where the weight reaches `share`.
    double place(double share) const {
        std::size_t k = 1;
        while (k + 1 < weight.size() && weight[k] < share) ++k;
        const double within = weight[k] - weight[k - 1];
        const double part = within > 0.0 ? std::clamp((share - weight[k - 1]) / within, 0.0, 1.0) : 0.0;
        return edges[k - 1] + part * (edges[k] - edges[k - 1]);
    }
};

Cumulated cumulated(std::span<const double> values, std::span<const double> weights) {
    double sum = 0.0;
    for (const double weight : weights) sum += weight;
    Cumulated result{.edges = {std::log(values.front())}, .weight = {0.0}};
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double edge =
            i + 1 < values.size() ? 0.5 * (std::log(values[i]) + std::log(values[i + 1])) : std::log(values.back());
        result.edges.push_back(edge);
        result.weight.push_back(result.weight.back() + weights[i] / sum);
    }
    return result;
}

}  // namespace

Region shortest_region(std::span<const double> values, std::span<const double> weights, double share) {
    const Cumulated all = cumulated(values, weights);
    // The shortest one begins or ends at an edge.
    double low = all.edges.front();
    double high = all.edges.back();
    const auto take = [&](double from, double to) {
        if (to - from >= high - low) return;
        low = from;
        high = to;
    };
    for (std::size_t k = 0; k < all.edges.size(); ++k) {
        if (all.weight[k] + share <= 1.0) take(all.edges[k], all.place(all.weight[k] + share));
        if (all.weight[k] >= share) take(all.place(all.weight[k] - share), all.edges[k]);
    }
    return {std::exp(low), std::exp(high)};
}

std::vector<double> moved_weights(std::span<const double> values, std::span<const double> weights,
                                  std::span<const double> onto) {
    double sum = 0.0;
    for (const double weight : weights) sum += weight;
    std::vector<double> moved(onto.size(), 0.0);
    if (!(sum > 0.0)) return moved;
    const Cumulated from = cumulated(values, weights);
    const Cumulated places = cumulated(onto, std::vector<double>(onto.size(), 1.0));
    for (std::size_t k = 0; k < onto.size(); ++k)
        moved[k] = sum * (from.up_to(places.edges[k + 1]) - from.up_to(places.edges[k]));
    return moved;
}

}  // namespace sim::match
