// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/inharmonicity.hpp"

#include "analysis/fourier_sums.hpp"
#include "analysis/spectrum.hpp"
#include "analysis/statistics.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <numbers>

namespace analysis {
namespace {

constexpr std::array<std::size_t, 4> rounds{4, 7, 12, 20};  // partials looked at
constexpr std::size_t least_partials = 4;
constexpr double least_share = 0.01;  // of the strongest amplitude
constexpr std::size_t most_frames = 6;
constexpr double frame_periods = 18.0;
constexpr double pi = std::numbers::pi;

/// A stretch and the pitch in it.
struct Frame {
    std::span<const double> samples;
    double hz = 0.0;
};

/// Squares of partials' frequencies over n times the pitch: level + slope n².  The frames' pitch is what all partials
/// together repeat with, so the level is near 1 but not 1.
struct Line {
    double level = 1.0;
    double slope = 0.0;
    double slope_error = 0.0;

    double ratio(std::size_t n) const { return std::sqrt(std::max(0.1, level + slope * static_cast<double>(n * n))); }
};

/// The samples' Fourier sums under a Hann window at these frequencies, Hz.
std::vector<std::complex<double>> sums_at(std::span<const double> samples, double sample_rate,
                                          const std::vector<double>& hz) {
    std::vector<double> windowed = hann_window(static_cast<double>(samples.size()));
    for (std::size_t j = 0; j < windowed.size(); ++j) windowed[j] *= samples[j];
    std::vector<std::complex<double>> sums;
    for (std::size_t n = 0; n < hz.size(); n += fourier_lanes) {
        std::array<double, fourier_lanes> omega{};
        for (std::size_t l = 0; l < std::min(fourier_lanes, hz.size() - n); ++l)
            omega[l] = 2.0 * pi * hz[n + l] / sample_rate;
        const auto some = fourier_sums(windowed, omega);
        sums.insert(sums.end(), some.begin(), some.end());
    }
    sums.resize(hz.size());
    return sums;
}

/// Frequencies over n times the pitch, [n - 1][frame], by how far each partial's phase runs from one window to another.
using Ratios = std::vector<std::vector<double>>;

void add_frame(const Frame& frame, double sample_rate, const Line& line, Ratios& all) {
    const std::size_t part = frame.samples.size() * 2 / 3;
    std::vector<double> expected;
    for (std::size_t n = 1; n <= all.size(); ++n) {
        const double hz = static_cast<double>(n) * frame.hz * line.ratio(n);
        if (hz < 0.45 * sample_rate) expected.push_back(hz);
    }
    const auto early = sums_at(frame.samples.first(part), sample_rate, expected);
    const auto late = sums_at(frame.samples.last(part), sample_rate, expected);
    const double apart = static_cast<double>(frame.samples.size() - part) / sample_rate;
    double strongest = 0.0;
    for (const auto& value : late) strongest = std::max(strongest, std::abs(value));
    for (std::size_t n = 0; n < expected.size(); ++n) {
        if (std::min(std::abs(early[n]), std::abs(late[n])) < least_share * strongest) continue;
        const double turns = expected[n] * apart;
        const double ahead = std::arg(late[n] / early[n] * std::polar(1.0, -2.0 * pi * turns)) / (2.0 * pi);
        all[n].push_back(expected[n] * (1.0 + ahead / turns) / (static_cast<double>(n + 1) * frame.hz));
    }
}

/// Weighted by n.
std::optional<Line> line_through(const std::vector<double>& numbers, const std::vector<double>& squares) {
    if (numbers.size() < least_partials) return std::nullopt;
    double w = 0.0, wx = 0.0, wy = 0.0, wxx = 0.0, wxy = 0.0;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        const double x = numbers[i] * numbers[i];
        w += numbers[i];
        wx += numbers[i] * x;
        wy += numbers[i] * squares[i];
        wxx += numbers[i] * x * x;
        wxy += numbers[i] * x * squares[i];
    }
    const double spread = w * wxx - wx * wx;
    if (!(spread > 0.0)) return std::nullopt;
    const double slope = (w * wxy - wx * wy) / spread;
    const double level = (wy - slope * wx) / w;
    double left = 0.0;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        const double off = squares[i] - level - slope * numbers[i] * numbers[i];
        left += numbers[i] * off * off;
    }
    const double variance = left / w * static_cast<double>(numbers.size()) / static_cast<double>(numbers.size() - 2);
    return Line{level, slope, std::sqrt(variance * w / spread)};
}

/// From as many partials, looked for where this line puts them.
std::optional<Line> improved(const std::vector<Frame>& frames, double sample_rate, const Line& line,
                             std::size_t partials) {
    Ratios all(partials);
    for (const Frame& frame : frames) add_frame(frame, sample_rate, line, all);
    std::vector<double> numbers;
    std::vector<double> squares;
    for (std::size_t n = 0; n < partials; ++n) {
        if (2 * all[n].size() < frames.size() || all[n].empty()) continue;
        const double ratio = quantile(all[n], 0.5);
        numbers.push_back(static_cast<double>(n + 1));
        squares.push_back(ratio * ratio);
    }
    return line_through(numbers, squares);
}

}  // namespace

std::optional<Inharmonicity> measure_inharmonicity(std::span<const double> samples, double sample_rate,
                                                   const std::vector<ToneFrame>& tone) {
    std::vector<Frame> frames;
    const std::size_t step = tone.size() / most_frames + 1;
    for (std::size_t i = step / 2; i < tone.size(); i += step) {
        const double length = std::min(frame_periods / tone[i].hz * sample_rate, static_cast<double>(samples.size()));
        const double start = tone[i].time * sample_rate - 0.5 * length;
        const auto first =
            static_cast<std::size_t>(std::clamp(start, 0.0, static_cast<double>(samples.size()) - length));
        frames.push_back({samples.subspan(first, static_cast<std::size_t>(length)), tone[i].hz});
    }
    std::optional<Line> line;
    for (const std::size_t partials : rounds)
        if (const auto better = improved(frames, sample_rate, line.value_or(Line{}), partials)) line = better;
    if (!line) return std::nullopt;
    return Inharmonicity{line->slope / line->level, line->slope_error / line->level};
}

}  // namespace analysis
