// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/bow_path.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstdint>
#include <limits>

namespace sim::passage {

namespace {

constexpr double rounding = 1e-9;  // of a place: a limit of just three places is three

double step_of(const PathProblem& problem) {
    return (problem.places.back() - problem.places.front()) / static_cast<double>(problem.places.size() - 1);
}

/// Sums of a worth by the trapezoid up to each place, in steps: means between places are exact differences.
std::vector<double> summed(const std::vector<double>& worth) {
    std::vector<double> sums{0.0};
    for (std::size_t i = 1; i < worth.size(); ++i) sums.push_back(sums.back() + 0.5 * (worth[i - 1] + worth[i]));
    return sums;
}

/// What ways from place to place are worth.
class Values {
public:
    explicit Values(const PathProblem& problem) : problem_(problem), step_(step_of(problem)) {
        for (const auto& worth : problem.worths) sums_.push_back(summed(worth));
    }

    double value(const PathStretch& stretch, std::size_t from, std::size_t to) const {
        const double steps = std::abs(static_cast<double>(to) - static_cast<double>(from));
        const double cost = problem_.travel_cost * step_ * steps;
        if (stretch.worth < 0) return -cost;
        const auto worth = static_cast<std::size_t>(stretch.worth);
        const auto [low, high] = std::minmax(from, to);
        const double mean =
            low == high ? problem_.worths[worth][low] : (sums_[worth][high] - sums_[worth][low]) / steps;
        return stretch.weight * mean - cost;
    }

private:
    const PathProblem& problem_;
    double step_;
    std::vector<std::vector<double>> sums_;
};

}  // namespace

std::size_t places_within(const PathProblem& problem, const PathStretch& stretch) {
    const double places = std::floor(stretch.limit * stretch.duration / step_of(problem) + rounding);
    return static_cast<std::size_t>(std::clamp(places, 0.0, static_cast<double>(problem.places.size() - 1)));
}

double path_value(const PathProblem& problem, const BowPath& path) {
    assert(path.size() == problem.stretches.size() + 1);
    const Values values(problem);
    double sum = 0.0;
    for (std::size_t k = 0; k < problem.stretches.size(); ++k)
        sum += values.value(problem.stretches[k], path[k], path[k + 1]);
    return sum;
}

BowPath find_path(const PathProblem& problem) {
    const std::size_t places = problem.places.size();
    assert(places >= 2 && places <= std::numeric_limits<std::uint16_t>::max());
    const Values values(problem);
    std::vector<double> best(places, 0.0);              // of all paths that end here
    std::vector<std::vector<std::uint16_t>> came_from;  // [stretch][place]
    for (const PathStretch& stretch : problem.stretches) {
        const std::size_t most = places_within(problem, stretch);
        std::vector<double> next(places, -std::numeric_limits<double>::infinity());
        std::vector<std::uint16_t>& from = came_from.emplace_back(places);
        const auto consider = [&](std::size_t source, std::size_t target) {
            const double value = best[source] + values.value(stretch, source, target);
            if (value <= next[target]) return;
            next[target] = value;
            from[target] = static_cast<std::uint16_t>(source);
        };
        for (std::size_t target = 0; target < places; ++target)
            for (std::size_t way = 0; way <= most; ++way) {
                if (way <= target) consider(target - way, target);
                if (way > 0 && target + way < places) consider(target + way, target);
            }
        best = std::move(next);
    }
    BowPath path{static_cast<std::size_t>(std::ranges::max_element(best) - best.begin())};
    for (auto from = came_from.rbegin(); from != came_from.rend(); ++from) path.push_back((*from)[path.back()]);
    std::ranges::reverse(path);
    return path;
}

}  // namespace sim::passage
