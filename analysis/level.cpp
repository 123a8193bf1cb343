// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/level.hpp"

#include "analysis/spectrum.hpp"

#include <cmath>
#include <complex>
#include <vector>

namespace analysis {

double rms(std::span<const double> samples) {
    if (samples.empty()) return 0.0;
    double sum = 0.0;
    for (const double sample : samples) sum += sample * sample;
    return std::sqrt(sum / static_cast<double>(samples.size()));
}

double weighted_rms(std::span<const double> samples, double sample_rate, const Response& response) {
    if (samples.size() < 2) return 0.0;
    std::vector<double> window = hann_window(static_cast<double>(samples.size()));
    double weight = 0.0;
    double energy = 0.0;
    double mean = 0.0;
    for (std::size_t j = 0; j < samples.size(); ++j) {
        weight += window[j];
        energy += window[j] * window[j];
        mean += window[j] * samples[j];
    }
    mean /= weight;
    for (std::size_t j = 0; j < samples.size(); ++j) window[j] *= samples[j] - mean;

    const std::size_t length = fast_length(samples.size());
    const std::vector<std::complex<double>> bins = spectrum(window, length);
    double sum = 0.0;
    for (std::size_t k = 1; k < bins.size(); ++k) {
        const double gain = response(static_cast<double>(k) * sample_rate / static_cast<double>(length));
        const double sides = k == length / 2 ? 1.0 : 2.0;  // Parseval: all but the last bin stand for two
        sum += sides * std::norm(bins[k]) * gain * gain;
    }
    return std::sqrt(sum / (static_cast<double>(length) * energy));
}

}  // namespace analysis
