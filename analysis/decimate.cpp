// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/decimate.hpp"

#include <array>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace analysis {
namespace {

/// Modified Bessel function of order 0, by its power series.
double bessel_i0(double x) {
    double term = 1.0;
    double sum = 1.0;
    for (int k = 1; term > 1e-17 * sum; ++k) {
        term *= (x / (2.0 * k)) * (x / (2.0 * k));
        sum += term;
    }
    return sum;
}

/// Kaiser-windowed sinc: A = 100 dB needs beta = 0.1102 (A - 8.7) and (A - 7.95)/(2.285 · 0.4 pi/factor) = 32 factor
/// taps for a transition 0.4 … 0.6 of the new rate (Kaiser's formulas).
std::vector<double> low_pass(int factor) {
    constexpr double beta = 0.1102 * (100.0 - 8.7);
    const int half = 16 * factor;
    std::vector<double> taps(static_cast<std::size_t>(2 * half + 1));
    double sum = 0.0;
    for (int i = 0; i <= half; ++i) {
        const double x = std::numbers::pi * i / factor;
        const double edge = static_cast<double>(i) / half;
        const double value = (i == 0 ? 1.0 : std::sin(x) / x) * bessel_i0(beta * std::sqrt(1.0 - edge * edge));
        taps[static_cast<std::size_t>(half + i)] = value;
        taps[static_cast<std::size_t>(half - i)] = value;
        sum += i == 0 ? value : 2.0 * value;
    }
    for (double& tap : taps) tap /= sum;
    return taps;
}

/// Sum of products in eight running sums: quick, and in an order that does not depend on the compiler's mood.
double dot(const double* a, const double* b, std::size_t count) {
    std::array<double, 8> sums{};
    std::size_t i = 0;
    for (; i + 8 <= count; i += 8) {
        for (std::size_t lane = 0; lane < 8; ++lane) sums[lane] += a[i + lane] * b[i + lane];
    }
    double rest = 0.0;
    for (; i < count; ++i) rest += a[i] * b[i];
    for (const double sum : sums) rest += sum;
    return rest;
}

}  // namespace

Signal decimate(std::span<const double> samples, double sample_rate, int factor) {
    assert(factor >= 1);
    if (factor == 1) return {{samples.begin(), samples.end()}, sample_rate};
    const std::vector<double> taps = low_pass(factor);
    Signal result{{}, sample_rate / factor};
    if (samples.size() < taps.size()) return result;
    const std::size_t step = static_cast<std::size_t>(factor);
    result.samples.resize((samples.size() - taps.size()) / step + 1);
    for (std::size_t k = 0; k < result.samples.size(); ++k) {
        result.samples[k] = dot(taps.data(), samples.data() + k * step, taps.size());
    }
    return result;
}

std::vector<double> decimation_taps(int factor) {
    assert(factor >= 1);
    return factor == 1 ? std::vector<double>{1.0} : low_pass(factor);
}

Decimator::Decimator(int factor) : taps_(decimation_taps(factor)), ring_(2 * taps_.size(), 0.0) {}

void Decimator::push(double sample) {
    ring_[next_] = ring_[next_ + taps_.size()] = sample;
    next_ = next_ + 1 == taps_.size() ? 0 : next_ + 1;
}

double Decimator::output() const { return dot(taps_.data(), ring_.data() + next_, taps_.size()); }

int decimation_factor(double sample_rate, double lowest_rate) {
    assert(sample_rate > 0.0 && lowest_rate > 0.0);
    return sample_rate < 2.0 * lowest_rate ? 1 : static_cast<int>(sample_rate / lowest_rate);
}

Signal decimated_for_analysis(std::span<const double> samples, double sample_rate) {
    return decimate(samples, sample_rate, decimation_factor(sample_rate, analysis_rate));
}

}  // namespace analysis
