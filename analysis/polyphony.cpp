// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/polyphony.hpp"

#include "analysis/spectrum.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numeric>

namespace analysis {
namespace {

constexpr double looked_at = 1.0;    // s
constexpr double stands_out = 31.6;  // in power: 15 dB
constexpr double weakest = 1e-4;     // of the strongest peak's power
constexpr double aside = 0.125;      // of the fundamental
constexpr double highest_partial = 12.5;
constexpr double lowest_hz = 40.0;

/// Median of the bins around one, far enough to reach between partials.
double surroundings(const std::vector<double>& power, std::size_t bin, std::size_t reach) {
    const std::size_t from = bin < reach ? 0 : bin - reach;
    const std::size_t to = std::min(power.size(), bin + reach + 1);
    std::vector<double> near(power.begin() + static_cast<std::ptrdiff_t>(from),
                             power.begin() + static_cast<std::ptrdiff_t>(to));
    const auto middle = near.begin() + static_cast<std::ptrdiff_t>(near.size() / 2);
    std::nth_element(near.begin(), middle, near.end());
    return *middle;
}

/// Do the partials lie on the multiples of two numbers and hardly anywhere else?
bool are_two_tones(std::span<const Partial> partials, std::size_t low, std::size_t high) {
    constexpr double hardly = 0.002;
    constexpr double plainly = 0.03;
    constexpr std::size_t looked_through = 30;
    double of_low = 0.0, of_high = 0.0, of_none = 0.0, all = 0.0;
    for (std::size_t n = 1; n <= std::min(partials.size(), looked_through); ++n) {
        const double power = partials[n - 1].amplitude * partials[n - 1].amplitude;
        all += power;
        if (n % low != 0 && n % high != 0) of_none += power;
        if (n % low == 0 && n % high != 0) of_low += power;
        if (n % high == 0 && n % low != 0) of_high += power;
    }
    return partials.size() >= 2 * high && of_none < hardly * all && of_low > plainly * all && of_high > plainly * all;
}

}  // namespace

double foreign_share(std::span<const double> samples, double sample_rate, double fundamental_hz) {
    const auto wanted = std::min(samples.size(), static_cast<std::size_t>(looked_at * sample_rate));
    if (wanted < 64) return 0.0;
    samples = samples.subspan((samples.size() - wanted) / 2, wanted);
    std::vector<double> windowed = hann_window(static_cast<double>(wanted));
    for (std::size_t j = 0; j < wanted; ++j) windowed[j] *= samples[j];
    const std::size_t length = common_length(wanted);
    std::vector<double> power;
    for (const auto& bin : spectrum(windowed, length)) power.push_back(std::norm(bin));
    const double per_bin = sample_rate / static_cast<double>(length);
    const auto last = std::min(power.size() - 1, static_cast<std::size_t>(highest_partial * fundamental_hz / per_bin));
    const double strongest = *std::max_element(power.begin(), power.begin() + static_cast<std::ptrdiff_t>(last));
    const auto reach = static_cast<std::size_t>(fundamental_hz / per_bin);
    double own = 0.0;
    double foreign = 0.0;
    for (auto k = static_cast<std::size_t>(lowest_hz / per_bin) + 1; k < last; ++k) {
        if (power[k] < power[k - 1] || power[k] < power[k + 1] || power[k] < weakest * strongest) continue;
        if (power[k] < stands_out * surroundings(power, k, reach)) continue;
        const double n = static_cast<double>(k) * per_bin / fundamental_hz;
        (std::abs(n - std::round(n)) > aside ? foreign : own) += power[k];
    }
    return own + foreign > 0.0 ? foreign / (own + foreign) : 0.0;
}

bool is_pure_interval(std::span<const Partial> partials) {
    constexpr std::size_t highest = 9;
    for (std::size_t low = 2; low < highest; ++low)
        for (std::size_t high = low + 1; high <= highest; ++high)
            if (std::gcd(low, high) == 1 && are_two_tones(partials, low, high)) return true;
    return false;
}

}  // namespace analysis
