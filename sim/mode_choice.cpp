// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/mode_choice.hpp"

#include "sim/fit_points.hpp"
#include "sim/mode_polish.hpp"
#include "sim/vector_fit.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace sim {
namespace {

using Modes = std::vector<BridgeMode>;
using Points = std::vector<FitPoint>;

constexpr double two_pi = 2.0 * std::numbers::pi;
constexpr double most_coarse_points = 2000.0;
constexpr double least_apart = 1.0 / 2500.0;
constexpr int usual_pairs = 32;
constexpr int more_pairs = 10;  // than modes wanted
constexpr int rounds = 6;
constexpr std::size_t most_peaks = 40;
constexpr std::size_t spare_modes = 8;  // kept beyond the most that may be chosen, before polishing
constexpr double beyond = 2.5;          // range's end to the farthest mode beyond it
constexpr double misfit_floor = 0.25;   // 0.25 % of |Y|, or 0.02 dB, where 0.5 % has weight 1
constexpr double usual_q = 20.0;        // of modes beyond the range, to begin with

ModeLimits limits_of(const HzRange& range) {
    constexpr double lowest = 5.0;  // a preset's modes
    constexpr double highest = 20000.0;
    return {.hz_low = std::max(range.low / beyond, lowest),
            .hz_high = std::min(range.high * beyond, highest),
            .range_low = range.low,
            .range_high = range.high};
}

BridgeMode candidate(double hz, double q, const ModeLimits& limits) {
    return {.frequency = std::clamp(hz, limits.hz_low, limits.hz_high),
            .q = std::clamp(q, limits.q_low, limits.q_high),
            .mass = 1.0,
            .radiation = 1.0};
}

/// Where Re Y falls to half of the peak at `i`, on the side that `step` goes; how far that is, rad/s.
double half_width(const Points& points, std::size_t i, int step) {
    auto at = static_cast<std::ptrdiff_t>(i);
    const auto count = static_cast<std::ptrdiff_t>(points.size());
    while (at + step >= 0 && at + step < count && points[at].y.real() > 0.5 * points[i].y.real()) at += step;
    return std::abs(points[at].omega - points[i].omega);
}

void add_peaks(const Points& points, const ModeLimits& limits, Modes& candidates) {
    std::vector<std::size_t> peaks;
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
        const double here = points[i].y.real();
        if (here > 0.0 && here >= points[i - 1].y.real() && here > points[i + 1].y.real()) peaks.push_back(i);
    }
    std::ranges::sort(peaks, [&](std::size_t a, std::size_t b) {
        return points[a].weight * points[a].y.real() > points[b].weight * points[b].y.real();
    });
    peaks.resize(std::min(peaks.size(), most_peaks));
    for (const std::size_t i : peaks) {
        const double width = half_width(points, i, -1) + half_width(points, i, 1);
        candidates.push_back(candidate(points[i].omega / two_pi, points[i].omega / width, limits));
    }
}

Modes candidates_of(const Points& points, const HzRange& range, int pairs) {
    const ModeLimits limits = limits_of(range);
    Modes candidates;
    for (const std::complex<double>& pole : vector_fit_poles(points, pairs, rounds)) {
        const double own = std::abs(pole);
        candidates.push_back(candidate(own / two_pi, own / (-2.0 * pole.real()), limits));
    }
    add_peaks(points, limits, candidates);
    for (const double away : {1.15, 1.6, beyond}) {
        candidates.push_back(candidate(range.low / away, usual_q, limits));
        candidates.push_back(candidate(range.high * away, usual_q, limits));
    }
    return candidates;
}

std::size_t count_inside(const Modes& modes, const HzRange& range) {
    return static_cast<std::size_t>(
        std::ranges::count_if(modes, [&](const BridgeMode& mode) { return is_inside(mode, range); }));
}

/// Leaves out the mode that is needed least; of those in the range only if `from_inside`.
bool leave_one_out(const Points& points, Modes& modes, const HzRange& range, bool from_inside) {
    const std::vector<double> costs = costs_of_leaving_out(points, modes);
    std::size_t least = modes.size();
    for (std::size_t i = 0; i < modes.size(); ++i) {
        if (!from_inside && is_inside(modes[i], range)) continue;
        if (least == modes.size() || costs[i] < costs[least]) least = i;
    }
    if (least == modes.size()) return false;
    modes.erase(modes.begin() + static_cast<std::ptrdiff_t>(least));
    return true;
}

/// Independent numbers in the points: real and imaginary parts, fewer where some points count for more than others.
double count_of(const Points& points) {
    double squares = 0.0;
    for (const FitPoint& point : points) squares += point.share * point.share;
    return 2.0 / squares;
}

double score(double misfit, std::size_t modes, double count) {
    return count * std::log(misfit + misfit_floor) + 3.0 * static_cast<double>(modes) * std::log(count);
}

/// Modes that lie within a small part of their width of each other are one: nothing could tell them apart.
Modes merged(Modes modes) {
    constexpr double small_part = 0.15;
    std::ranges::sort(modes, {}, &BridgeMode::frequency);
    Modes result;
    for (const BridgeMode& mode : modes) {
        if (!result.empty()) {
            BridgeMode& last = result.back();
            const double width = std::min(last.frequency / last.q, mode.frequency / mode.q);
            if (mode.frequency - last.frequency < small_part * width && std::abs(std::log(mode.q / last.q)) < 0.5) {
                const double share = last.mass / (last.mass + mode.mass);  // the lighter one counts for more
                last.frequency += share * (mode.frequency - last.frequency);
                last.q += share * (mode.q - last.q);
                last.mass = 1.0 / (1.0 / last.mass + 1.0 / mode.mass);
                continue;
            }
        }
        result.push_back(mode);
    }
    return result;
}

/// The best set on the way from many modes down to one.
Modes best_on_the_way_down(const Points& points, Modes modes, const HzRange& range, std::optional<int> wanted) {
    const ModeLimits limits = limits_of(range);
    const double count = count_of(points);
    const auto most = static_cast<std::size_t>(wanted.value_or(most_chosen_modes));
    // where there are fewer than wanted, the most there are
    const std::size_t least = wanted ? std::min(most, count_inside(modes, range)) : 0;
    Modes best = modes;
    double best_score = std::numeric_limits<double>::infinity();
    while (!modes.empty()) {
        const std::size_t inside = count_inside(modes, range);
        const double here = score(misfit(points, modes), modes.size(), count);
        if (inside <= most && inside >= least && here < best_score) {
            best = modes;
            best_score = here;
        }
        if (!leave_one_out(points, modes, range, inside > least)) break;
        modes = polished(points, with_best_masses(points, modes), limits, {.most_steps = 12, .settled = 1e-4});
        if (!wanted) modes = merged(modes);
    }
    return best;
}

/// Distance between the points about a mode, rad/s.
double spacing_at(const Points& points, const BridgeMode& mode) {
    const auto above = std::ranges::lower_bound(points, two_pi * mode.frequency, {}, &FitPoint::omega);
    if (above == points.begin() || above == points.end()) return 0.0;
    return above->omega - std::prev(above)->omega;
}

/// A mode narrower than the points stand apart may be one point's noise: it stays only if it is plainly needed.
Modes without_spikes(const Points& points, Modes modes, const ModeLimits& limits) {
    constexpr double plainly = 1.1;
    for (std::size_t i = modes.size(); i-- > 0;) {
        if (two_pi * modes[i].frequency / modes[i].q > spacing_at(points, modes[i])) continue;
        Modes others = modes;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        others = polished(points, others, limits, {.most_steps = 8, .settled = 1e-4});
        if (misfit(points, others) < plainly * misfit(points, modes) + misfit_floor) modes = std::move(others);
    }
    return modes;
}

}  // namespace

bool is_inside(const BridgeMode& mode, const HzRange& range) {
    return mode.frequency >= range.low && mode.frequency <= range.high;
}

Modes chosen_modes(const AdmittancePoints& measured, const HzRange& range, std::optional<int> wanted) {
    const ModeLimits limits = limits_of(range);
    const double apart = std::max(least_apart, std::log(range.high / range.low) / most_coarse_points);
    const Points coarse = fit_points(measured, apart);
    const int most = wanted.value_or(most_chosen_modes);
    const int pairs = std::clamp(static_cast<int>(coarse.size()) / 4, 1, std::max(usual_pairs, most + more_pairs));
    Modes modes = with_best_masses(coarse, candidates_of(coarse, range, pairs));
    while (modes.size() > static_cast<std::size_t>(most) + spare_modes) {
        leave_one_out(coarse, modes, range, true);
        modes = with_best_masses(coarse, modes);
    }
    modes = polished(coarse, modes, limits, {.most_steps = 15, .settled = 1e-4});
    Points fine = fit_points(measured, modes);
    modes = polished(fine, modes, limits, {.most_steps = 15, .settled = 1e-4});
    weigh_by_noise(fine, modes);
    modes = polished(fine, modes, limits, {.most_steps = 20, .settled = 1e-4});
    if (!wanted) modes = merged(modes);
    modes = best_on_the_way_down(fine, modes, range, wanted);
    if (!wanted) modes = without_spikes(fine, modes, limits);
    return polished(fine, modes, limits, {.most_steps = 60, .settled = 1e-10});
}

}  // namespace sim
