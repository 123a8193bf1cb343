// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/rule.hpp"

#include "sim/text.hpp"

#include <array>
#include <cassert>
#include <cmath>
#include <vector>

namespace sim {

namespace {

constexpr std::array<std::string_view, 4> names{"holds", "weakens", "reverses", "undecided"};

/// Ties share the mean of their ranks.
std::vector<double> ranks(std::span<const double> values) {
    std::vector<double> result;
    for (const double value : values) {
        double rank = 0.0;
        for (const double other : values) rank += other < value ? 1.0 : (other == value ? 0.5 : 0.0);
        result.push_back(rank);
    }
    return result;
}

RuleVerdict verdict_of(const RuleAnswer& answer) {
    if (answer.stops < rule_least_stops) return RuleVerdict::undecided;
    if (answer.correlation >= 0.0 || answer.ratio >= 1.0) return RuleVerdict::reverses;
    const bool clear = answer.correlation <= rule_holds_correlation && answer.follows >= rule_holds_follows;
    return clear ? RuleVerdict::holds : RuleVerdict::weakens;
}

}  // namespace

std::string_view rule_verdict_name(RuleVerdict verdict) { return names[static_cast<std::size_t>(verdict)]; }

double rank_correlation(std::span<const double> a, std::span<const double> b) {
    assert(a.size() == b.size());
    const std::vector<double> ra = ranks(a);
    const std::vector<double> rb = ranks(b);
    const double mean = static_cast<double>(a.size()) / 2.0;  // each value counts itself as half
    double ab = 0.0;
    double aa = 0.0;
    double bb = 0.0;
    for (std::size_t i = 0; i < ra.size(); ++i) {
        ab += (ra[i] - mean) * (rb[i] - mean);
        aa += (ra[i] - mean) * (ra[i] - mean);
        bb += (rb[i] - mean) * (rb[i] - mean);
    }
    return aa * bb > 0.0 ? ab / std::sqrt(aa * bb) : 0.0;
}

RuleAnswer judge_rule(std::span<const RulePlace> places) {
    RuleAnswer answer{.stops = static_cast<int>(places.size())};
    if (places.empty()) return answer;
    std::vector<double> stops;
    std::vector<double> best;
    for (const RulePlace& place : places) {
        stops.push_back(place.stop);
        best.push_back(place.best);
    }
    answer.correlation = rank_correlation(stops, best);
    answer.ratio = best.back() / best.front();
    const double shortening = places.back().sounding_length / places.front().sounding_length;
    if (shortening < 1.0) answer.follows = std::log(answer.ratio) / std::log(shortening);
    answer.verdict = verdict_of(answer);
    return answer;
}

std::string rule_in_words() {
    return "The rule: the best place lies nearer the bridge the higher the stop. holds: rank correlation of best place "
           "with stop at most " +
           short_number(rule_holds_correlation) +
           ", and from the lowest stop to the top one the place comes in by at least " +
           fixed_number(100.0 * rule_holds_follows, 0) +
           " % of the octaves by which the string shortens; reverses: correlation 0 or more, or the top place no "
           "nearer "
           "than the lowest; weakens: in between; undecided: fewer than " +
           std::to_string(rule_least_stops) + " stops with a best place.";
}

}  // namespace sim
