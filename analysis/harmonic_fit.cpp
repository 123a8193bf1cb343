// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/harmonic_fit.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace analysis {
namespace {

constexpr std::size_t strong_lines = 3;                   // of which one is a low enough multiple
constexpr std::array waverings{2e-4, 1e-3, 4e-3, 0.015};  // shares of the pitch
constexpr double stray_penalty = 2.0;                     // nats: that a line is none is told apart from where it lies
constexpr int most_pair_multiple = 8;                     // of one of two tones, that a strong line is
constexpr double believed = 3.0;                          // standard errors, for improving the fundamental

/// How well the lines are known.
struct LineErrors {
    double hz = 0.0;     ///< standard error of each
    double share = 0.0;  ///< and share of its frequency, by which the pitch wavers
};

double error_of(const SpectralPeak& line, const LineErrors& errors) {
    return std::hypot(errors.hz, errors.share * line.hz);
}

double highest_of(std::span<const SpectralPeak> lines) { return std::ranges::max(lines, {}, &SpectralPeak::hz).hz; }

/// Least squares over the lines that are its multiples.
double improved(double hz, int from, std::span<const SpectralPeak> lines, const LineErrors& errors) {
    double up = 0.0;
    double down = 0.0;
    for (const SpectralPeak& line : lines) {
        const double n = std::round(line.hz / hz);
        const double error = error_of(line, errors);
        // The fundamental itself is known to no better than the line it was taken from.
        if (n < 1.0 || std::abs(line.hz - n * hz) > believed * error * std::max(1.0, n / from)) continue;
        up += n * line.hz / (error * error);
        down += n * n / (error * error);
    }
    return down > 0.0 ? up / down : hz;
}

/// Costs of a line under this fundamental, less the choice of a multiple, nats.
double off_cost(const SpectralPeak& line, double hz, const LineErrors& errors) {
    const double error = error_of(line, errors);
    const double off = (line.hz - std::max(1.0, std::round(line.hz / hz)) * hz) / error;
    return std::log(error * std::sqrt(2.0 * std::numbers::pi)) + 0.5 * off * off;
}

double multiples_of(double hz, double highest) { return std::max(1.0, std::round(highest / hz)); }

double gain_of(double hz, std::span<const SpectralPeak> lines, const LineErrors& errors) {
    const double highest = highest_of(lines);
    const double anywhere = std::log(highest) + stray_penalty;
    const double choice = std::log(multiples_of(hz, highest));
    double gain = 0.0;
    for (const SpectralPeak& line : lines) gain += std::max(0.0, anywhere - choice - off_cost(line, hz, errors));
    return gain;
}

/// The best fundamental of so many multiples below the strongest lines.
std::optional<HarmonicFit> best_fit(std::span<const SpectralPeak> lines, const LineErrors& errors,
                                    const PitchRange& range, int multiples) {
    std::optional<HarmonicFit> best;
    for (std::size_t i = 0; i < std::min(strong_lines, lines.size()); ++i)
        for (int k = 1; k <= multiples; ++k) {
            double hz = lines[i].hz / k;
            if (hz < range.lowest || hz > range.highest) continue;
            for (int round = 0; round < 2; ++round) hz = improved(hz, k, lines, errors);
            const double gain = gain_of(hz, lines, errors);
            if (!best || gain > best->gain) best = HarmonicFit{hz, gain, errors.share};
        }
    return best;
}

/// Two given fundamentals: each line belongs to that which tells it more shortly.
PairFit pair_of(double one, double other, std::span<const SpectralPeak> lines, const LineErrors& errors) {
    const double highest = highest_of(lines);
    const double anywhere = std::log(highest) + stray_penalty;
    const double choice = std::log(multiples_of(one, highest) + multiples_of(other, highest));
    PairFit pair{std::min(one, other), std::max(one, other), -std::log(highest / errors.hz), 0.0, 0};
    std::array<double, 2> power{};
    std::array<int, 2> count{};
    double all = 0.0;
    for (const SpectralPeak& line : lines) {
        const double with_one = anywhere - choice - off_cost(line, one, errors);
        const double with_other = anywhere - choice - off_cost(line, other, errors);
        pair.gain += std::max({0.0, with_one, with_other});
        all += line.power;
        if ((with_one > 0.0) == (with_other > 0.0)) continue;
        const std::size_t whose = with_one > 0.0 ? 0 : 1;
        power[whose] += line.power;
        ++count[whose];
    }
    pair.share = std::min(power[0], power[1]) / all;
    pair.lines = std::min(count[0], count[1]);
    return pair;
}

}  // namespace

std::optional<HarmonicFit> fit_fundamental(std::span<const SpectralPeak> lines, double error_hz,
                                           const PitchRange& range) {
    std::optional<HarmonicFit> best;
    for (const double share : waverings) {
        const auto fit = best_fit(lines, {error_hz, share}, range, most_multiple);
        if (fit && (!best || fit->gain > best->gain)) best = fit;
    }
    return best;
}

std::optional<PairFit> fit_pair(std::span<const SpectralPeak> lines, double error_hz, double waver,
                                const PitchRange& range) {
    const LineErrors errors{error_hz, waver};
    std::optional<PairFit> best;
    for (std::size_t i = 0; i < std::min(strong_lines, lines.size()); ++i)
        for (int k = 1; k <= most_pair_multiple; ++k) {
            double one = lines[i].hz / k;
            if (one < range.lowest || one > range.highest) continue;
            for (int round = 0; round < 2; ++round) one = improved(one, k, lines, errors);
            const double anywhere = std::log(highest_of(lines)) + stray_penalty;
            const double choice = std::log(multiples_of(one, highest_of(lines)));
            std::vector<SpectralPeak> rest;
            for (const SpectralPeak& line : lines)
                if (anywhere - choice - off_cost(line, one, errors) <= 0.0) rest.push_back(line);
            const auto other = best_fit(rest, errors, range, most_pair_multiple);
            if (!other) continue;
            const PairFit pair = pair_of(one, other->hz, lines, errors);
            if (!best || pair.gain > best->gain) best = pair;
        }
    return best;
}

}  // namespace analysis
