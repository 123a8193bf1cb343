// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/spectral_peaks.hpp"

#include "analysis/spectrum.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace analysis {
namespace {

constexpr double stands_out = 50.0;  // in power: 17 dB, which noise hardly ever does
constexpr double around_hz = 100.0;
constexpr std::size_t fewest_around = 12;  // bins either side

/// Blackman's window with the side lobes made least: zeros of the transform on the third and fourth of them.
constexpr double window_mean = 7938.0 / 18608.0;
constexpr double window_first = 9240.0 / 18608.0;
constexpr double window_second = 1430.0 / 18608.0;

std::vector<double> windowed(std::span<const double> samples) {
    // cos 2x = 2 cos² x - 1, and a Hann window holds cos x.
    std::vector<double> window = hann_window(static_cast<double>(samples.size()));
    for (std::size_t j = 0; j < samples.size(); ++j) {
        const double cosine = 1.0 - 2.0 * window[j];
        const double weight = window_mean - window_first * cosine + window_second * (2.0 * cosine * cosine - 1.0);
        window[j] = weight * samples[j];
    }
    return window;
}

/// The lower third of the bins around one.
double surroundings(const std::vector<double>& power, std::size_t bin, std::size_t reach) {
    const std::size_t from = bin < reach ? 0 : bin - reach;
    const std::size_t to = std::min(power.size(), bin + reach + 1);
    std::vector<double> near(power.begin() + static_cast<std::ptrdiff_t>(from),
                             power.begin() + static_cast<std::ptrdiff_t>(to));
    const auto third = near.begin() + static_cast<std::ptrdiff_t>(near.size() / 3);
    std::nth_element(near.begin(), third, near.end());
    return *third;
}

/// Vertex of the parabola through three logarithms of power, in bins from the middle one.
SpectralPeak vertex(const std::vector<double>& power, std::size_t bin, double per_bin) {
    const double least = 1e-30 * power[bin];
    const double before = std::log(std::max(power[bin - 1], least));
    const double here = std::log(power[bin]);
    const double after = std::log(std::max(power[bin + 1], least));
    const double bend = before - 2.0 * here + after;
    const double shift = bend < 0.0 ? 0.5 * (before - after) / bend : 0.0;
    return {(static_cast<double>(bin) + shift) * per_bin, std::exp(here - 0.25 * (before - after) * shift)};
}

}  // namespace

std::vector<SpectralPeak> spectral_peaks(std::span<const double> samples, double sample_rate,
                                         const PeakSearch& search) {
    if (samples.size() < 64) return {};
    const std::size_t length = common_length(samples.size());
    const double gain = window_mean * static_cast<double>(samples.size());
    std::vector<double> power;
    for (const auto& bin : spectrum(windowed(samples), length)) power.push_back(2.0 * std::norm(bin) / (gain * gain));
    const double per_bin = sample_rate / static_cast<double>(length);
    const auto first = std::max<std::size_t>(2, static_cast<std::size_t>(search.lowest_hz / per_bin));
    const auto last = std::min(power.size() - 2, static_cast<std::size_t>(search.highest_hz / per_bin));
    if (first >= last) return {};
    const double strongest = *std::max_element(power.begin() + static_cast<std::ptrdiff_t>(first),
                                               power.begin() + static_cast<std::ptrdiff_t>(last));
    const double least = strongest * std::pow(10.0, -0.1 * search.within_db);
    const auto reach = std::max(fewest_around, static_cast<std::size_t>(around_hz / per_bin));
    std::vector<SpectralPeak> peaks;
    for (std::size_t k = first; k <= last; ++k) {
        if (!(power[k] > least) || power[k] < power[k - 1] || power[k] <= power[k + 1]) continue;
        if (power[k] > stands_out * surroundings(power, k, reach)) peaks.push_back(vertex(power, k, per_bin));
    }
    std::ranges::stable_sort(peaks, std::ranges::greater{}, &SpectralPeak::power);
    if (peaks.size() > search.most) peaks.resize(search.most);
    return peaks;
}

}  // namespace analysis
