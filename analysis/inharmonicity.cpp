// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/inharmonicity.hpp"

#include "analysis/statistics.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace analysis {
namespace {

constexpr std::size_t most_partials = 20;
constexpr std::size_t least_partials = 4;
constexpr double least_share = 0.01;  // of the strongest amplitude
constexpr std::size_t most_frames = 6;
constexpr double frame_periods = 18.0;
constexpr double pi = std::numbers::pi;

/// How far a partial ran ahead of n times the pitch between two windows: turns less whole ones, and turns of n times
/// the pitch meanwhile.
struct Advance {
    double ahead = 0.0;
    double turns = 0.0;
};
using Advances = std::vector<std::vector<Advance>>;  // [n - 1][frame]

void add_frame(std::span<const double> frame, double sample_rate, double hz, Advances& all) {
    const std::size_t part = frame.size() * 2 / 3;
    const HarmonicSeries series{hz, (most_partials + 0.5) * hz};
    const HarmonicSums early = harmonic_sums(frame.first(part), sample_rate, series);
    const HarmonicSums late = harmonic_sums(frame.last(part), sample_rate, series);
    // Both windows end with their samples and are equally long.
    const double apart = static_cast<double>(frame.size() - part) / sample_rate;
    double strongest = 0.0;
    for (const auto& value : late.values) strongest = std::max(strongest, std::abs(value));
    for (std::size_t n = 0; n < std::min({most_partials, early.values.size(), late.values.size()}); ++n) {
        if (std::min(std::abs(early.values[n]), std::abs(late.values[n])) < least_share * strongest) continue;
        const double turns = static_cast<double>(n + 1) * hz * apart;
        const double ahead =
            std::arg(late.values[n] / early.values[n] * std::polar(1.0, -2.0 * pi * turns)) / (2.0 * pi);
        all[n].push_back({ahead, turns});
    }
}

/// Share of n times the pitch by which the partial lies above it, the whole turns chosen nearest to what is expected.
double deviation(const std::vector<Advance>& advances, double expected) {
    std::vector<double> shares;
    for (const Advance& advance : advances) {
        const double whole = std::round(expected * advance.turns - advance.ahead);
        shares.push_back((advance.ahead + whole) / advance.turns);
    }
    return quantile(shares, 0.5);
}

struct Line {
    double level = 0.0;
    double slope = 0.0;
    double slope_error = 0.0;
};

/// Deviations y = c + B/2 (n² - 1): a straight line, weighted by n.
std::optional<Line> line_through(const std::vector<double>& numbers, const std::vector<double>& deviations) {
    double w = 0.0, wx = 0.0, wy = 0.0, wxx = 0.0, wxy = 0.0;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        const double x = numbers[i] * numbers[i] - 1.0;
        w += numbers[i];
        wx += numbers[i] * x;
        wy += numbers[i] * deviations[i];
        wxx += numbers[i] * x * x;
        wxy += numbers[i] * x * deviations[i];
    }
    const double spread = w * wxx - wx * wx;
    if (!(spread > 0.0)) return std::nullopt;
    const double slope = (w * wxy - wx * wy) / spread;
    const double level = (wy - slope * wx) / w;
    double left = 0.0;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        const double off = deviations[i] - level - slope * (numbers[i] * numbers[i] - 1.0);
        left += numbers[i] * off * off;
    }
    const double variance = left / w * static_cast<double>(numbers.size()) / static_cast<double>(numbers.size() - 2);
    return Line{level, slope, std::sqrt(variance * w / spread)};
}

}  // namespace

std::optional<Inharmonicity> measure_inharmonicity(std::span<const double> samples, double sample_rate,
                                                   const std::vector<ToneFrame>& frames) {
    Advances all(most_partials);
    const std::size_t step = frames.size() / most_frames + 1;
    for (std::size_t i = step / 2; i < frames.size(); i += step) {
        const double length = std::min(frame_periods / frames[i].hz * sample_rate, static_cast<double>(samples.size()));
        const double start = frames[i].time * sample_rate - 0.5 * length;
        const auto first =
            static_cast<std::size_t>(std::clamp(start, 0.0, static_cast<double>(samples.size()) - length));
        add_frame(samples.subspan(first, static_cast<std::size_t>(length)), sample_rate, frames[i].hz, all);
    }
    std::vector<double> numbers;
    std::vector<double> deviations;
    std::optional<Line> line;
    for (std::size_t n = 0; n < most_partials; ++n) {
        if (2 * all[n].size() < std::max<std::size_t>(1, (frames.size() + step - 1) / step)) continue;
        const double number = static_cast<double>(n + 1);
        numbers.push_back(number);
        // A partial far up may have turned by whole turns more: what lies below tells how many.
        deviations.push_back(deviation(all[n], line ? line->level + line->slope * (number * number - 1.0) : 0.0));
        if (numbers.size() >= least_partials) line = line_through(numbers, deviations);
    }
    if (!line) return std::nullopt;
    return Inharmonicity{2.0 * line->slope, 2.0 * line->slope_error};
}

}  // namespace analysis
