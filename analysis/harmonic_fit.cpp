// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/harmonic_fit.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace analysis {
namespace {

constexpr std::size_t strong_lines = 3;                   // of which one is a low enough multiple
constexpr std::array waverings{2e-4, 1e-3, 4e-3, 0.015};  // shares of the pitch
constexpr double stray_penalty = 2.0;                     // nats: that a line is none is told apart from where it lies
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

double gain_of(double hz, std::span<const SpectralPeak> lines, const LineErrors& errors) {
    const double highest = highest_of(lines);
    const double multiples = std::max(1.0, std::round(highest / hz));
    const double anywhere = std::log(highest) + stray_penalty;
    double gain = 0.0;
    for (const SpectralPeak& line : lines) {
        const double n = std::max(1.0, std::round(line.hz / hz));
        const double error = error_of(line, errors);
        const double off = (line.hz - n * hz) / error;
        const double multiple =
            std::log(multiples) + std::log(error * std::sqrt(2.0 * std::numbers::pi)) + 0.5 * off * off;
        gain += std::max(0.0, anywhere - multiple);
    }
    return gain;
}

}  // namespace

std::optional<HarmonicFit> fit_fundamental(std::span<const SpectralPeak> lines, double error_hz,
                                           const PitchRange& range) {
    std::optional<HarmonicFit> best;
    for (std::size_t i = 0; i < std::min(strong_lines, lines.size()); ++i)
        for (int k = 1; k <= most_multiple; ++k)
            for (const double share : waverings) {
                const LineErrors errors{error_hz, share};
                double hz = lines[i].hz / k;
                if (hz < range.lowest || hz > range.highest) continue;
                for (int round = 0; round < 2; ++round) hz = improved(hz, k, lines, errors);
                const double gain = gain_of(hz, lines, errors);
                if (!best || gain > best->gain) best = HarmonicFit{hz, gain, share};
            }
    return best;
}

}  // namespace analysis
