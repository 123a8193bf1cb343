// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/partials.hpp"

#include "analysis/decimate.hpp"
#include "analysis/spectrum.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numbers>

namespace analysis {
namespace {

constexpr std::size_t lanes = 8;

/// sum_j x_j exp(-i j w_l) for `lanes` frequencies at once; each lane turns a phasor by w_l a sample.
std::array<std::complex<double>, lanes> fourier_sums(std::span<const double> x,
                                                     const std::array<double, lanes>& omega) {
    std::array<double, lanes> step_re{}, step_im{}, re{}, im{}, sum_re{}, sum_im{};
    for (std::size_t l = 0; l < lanes; ++l) {
        step_re[l] = std::cos(omega[l]);
        step_im[l] = -std::sin(omega[l]);
        re[l] = 1.0;
    }
    for (const double sample : x) {
        for (std::size_t l = 0; l < lanes; ++l) {
            sum_re[l] += sample * re[l];
            sum_im[l] += sample * im[l];
            const double next = re[l] * step_re[l] - im[l] * step_im[l];
            im[l] = re[l] * step_im[l] + im[l] * step_re[l];
            re[l] = next;
        }
    }
    std::array<std::complex<double>, lanes> result{};
    for (std::size_t l = 0; l < lanes; ++l) result[l] = {sum_re[l], sum_im[l]};
    return result;
}

/// Decimated as far as the highest partial allows: it must stay inside the filter's flat part.
Signal prepared(std::span<const double> samples, double sample_rate, double max_hz) {
    const double lowest_rate = std::max(analysis_rate, max_hz / 0.4);
    return decimate(samples, sample_rate, decimation_factor(sample_rate, lowest_rate));
}

}  // namespace

HarmonicSums harmonic_sums(std::span<const double> samples, double sample_rate, const HarmonicSeries& series) {
    assert(sample_rate > 0.0 && series.fundamental_hz > 0.0);
    const Signal signal = prepared(samples, sample_rate, series.max_hz);
    const double period = signal.sample_rate / series.fundamental_hz;  // samples
    const double periods = std::floor(static_cast<double>(signal.samples.size()) / period);
    if (periods < 2.0) return {};
    const double length = periods * period;

    std::vector<double> windowed = hann_window(length);
    const std::size_t first = signal.samples.size() - std::min(signal.samples.size(), windowed.size());
    windowed.resize(signal.samples.size() - first);
    for (std::size_t j = 0; j < windowed.size(); ++j) windowed[j] *= signal.samples[first + j];

    const double highest = std::min(series.max_hz, 0.5 * signal.sample_rate);
    // A rounding's worth of slack, so that max_hz = n f0 includes n.
    const auto count = static_cast<std::size_t>(std::max(0.0, highest / series.fundamental_hz * (1.0 + 1e-12)));
    HarmonicSums result{.values = std::vector<std::complex<double>>(count), .duration = length / signal.sample_rate};
    for (std::size_t n = 0; n < count; n += lanes) {
        std::array<double, lanes> omega{};
        for (std::size_t l = 0; l < lanes; ++l) {
            omega[l] = 2.0 * std::numbers::pi * static_cast<double>(n + l + 1) / period;
        }
        const auto sums = fourier_sums(windowed, omega);
        // A Hann window of `length` weighs length/2; a real sine has half its amplitude on either side of 0 Hz.
        for (std::size_t l = 0; l < std::min(lanes, count - n); ++l) result.values[n + l] = sums[l] * (4.0 / length);
    }
    return result;
}

std::vector<Partial> measure_partials(std::span<const double> samples, double sample_rate,
                                      const HarmonicSeries& series) {
    const HarmonicSums sums = harmonic_sums(samples, sample_rate, series);
    std::vector<Partial> result;
    for (std::size_t n = 0; n < sums.values.size(); ++n)
        result.push_back({static_cast<double>(n + 1) * series.fundamental_hz, std::abs(sums.values[n])});
    return result;
}

std::optional<Brightness> brightness(std::span<const Partial> partials, double fundamental_hz) {
    double weight = 0.0;
    double moment = 0.0;
    for (const Partial& partial : partials) {
        if (partial.hz > brightness_limit_hz) continue;
        weight += partial.amplitude;
        moment += partial.hz * partial.amplitude;
    }
    if (!(weight > 0.0)) return std::nullopt;
    const double centroid = moment / weight;
    return Brightness{centroid, centroid / fundamental_hz};
}

}  // namespace analysis
