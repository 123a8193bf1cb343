// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/warble.hpp"

#include "analysis/spectrum.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <numbers>
#include <vector>

namespace analysis {
namespace {

constexpr double window_time = 0.020;  // s
constexpr double step_time = 0.0025;   // s
constexpr double least_time = 0.5;     // s
constexpr double range_db = 60.0;
constexpr double slow_below_hz = 45.0;  // the third harmonic of the highest rate
constexpr double least_cycles = 4.0;
constexpr int harmonics = 3;
constexpr double pi = std::numbers::pi;

struct Level {
    std::vector<double> db;
    double rate = 0.0;  ///< values a second
};

/// Mean square under a sliding Hann window, as dB.
Level level_of(std::span<const double> samples, double sample_rate) {
    const double mean = [&] {
        double sum = 0.0;
        for (const double sample : samples) sum += sample;
        return sum / static_cast<double>(samples.size());
    }();
    const std::vector<double> window = hann_window(window_time * sample_rate);
    const auto step = std::max<std::size_t>(1, static_cast<std::size_t>(std::lround(step_time * sample_rate)));
    Level level{.db = {}, .rate = sample_rate / static_cast<double>(step)};
    for (std::size_t from = 0; from + window.size() <= samples.size(); from += step) {
        double sum = 0.0;
        for (std::size_t j = 0; j < window.size(); ++j) {
            const double value = samples[from + j] - mean;
            sum += window[j] * value * value;
        }
        level.db.push_back(sum);
    }
    const double greatest = level.db.empty() ? 0.0 : *std::ranges::max_element(level.db);
    if (!(greatest > 0.0) || !std::isfinite(greatest)) return {};
    const double least = greatest * std::pow(ratio_from_db(-range_db), 2.0);
    for (double& value : level.db) value = 10.0 * std::log10(std::max(value, least));
    return level;
}

/// Takes away the straight line that fits best.
void remove_trend(std::vector<double>& values) {
    const double n = static_cast<double>(values.size());
    const double middle = (n - 1.0) / 2.0;
    double sum = 0.0;
    double slope = 0.0;
    double weight = 0.0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double x = static_cast<double>(i) - middle;
        sum += values[i];
        slope += x * values[i];
        weight += x * x;
    }
    for (std::size_t i = 0; i < values.size(); ++i)
        values[i] -= sum / n + slope / weight * (static_cast<double>(i) - middle);
}

/// Fourier sum of windowed values at any frequency, scaled to the amplitude of a sine there.
std::complex<double> component(const std::vector<double>& values, const std::vector<double>& window, double per_value) {
    std::complex<double> sum = 0.0;
    const std::complex<double> turn = std::polar(1.0, -2.0 * pi * per_value);
    std::complex<double> phase = 1.0;
    double weight = 0.0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        sum += window[i] * values[i] * phase;
        weight += window[i];
        phase *= turn;
    }
    return 2.0 * sum / weight;
}

/// The rate of the greatest component: looked for every eighth of a cycle in the record, then between.
double strongest_rate(const Level& level, const std::vector<double>& window) {
    const double duration = static_cast<double>(level.db.size()) / level.rate;
    const double lowest = std::max(warble_lowest_hz, least_cycles / duration);
    const double step = 0.125 / duration;
    const auto strength = [&](double hz) { return std::abs(component(level.db, window, hz / level.rate)); };
    double best = lowest;
    double greatest = -1.0;
    for (double hz = lowest; hz <= warble_highest_hz; hz += step)
        if (const double now = strength(hz); now > greatest) greatest = now, best = hz;
    const double before = strength(best - step);
    const double after = strength(best + step);
    const double bend = before - 2.0 * greatest + after;
    const double aside = bend < 0.0 ? std::clamp(0.5 * (before - after) / bend, -1.0, 1.0) : 0.0;
    return best + aside * step;
}

double variance(const std::vector<double>& values) {
    double sum = 0.0;
    for (const double value : values) sum += value * value;
    return sum / static_cast<double>(values.size());
}

/// What of the level changes more slowly than pitch does.
std::vector<double> slow_part(const Level& level) {
    const std::size_t length = fast_length(level.db.size());
    std::vector<std::complex<double>> bins = spectrum(level.db, length);
    for (std::size_t k = 0; k < bins.size(); ++k)
        if (static_cast<double>(k) * level.rate / static_cast<double>(length) > slow_below_hz) bins[k] = 0.0;
    std::vector<double> slow = inverse_spectrum(bins, length);
    slow.resize(level.db.size());
    return slow;
}

/// Mean cycle as harmonics of a rate, fitted one after another to what the last left over.
struct Cycle {
    std::array<std::complex<double>, harmonics> parts;
    double left_over = 0.0;  ///< variance
};
Cycle cycle_at(std::vector<double> values, double rate_per_value) {
    Cycle cycle;
    for (int round = 0; round < 3; ++round)  // neighbours are not quite orthogonal over a part of a cycle
        for (int k = 0; k < harmonics; ++k) {
            const double turns = rate_per_value * (k + 1);
            const std::vector<double> even(values.size(), 1.0);
            const std::complex<double> part = component(values, even, turns);
            cycle.parts[static_cast<std::size_t>(k)] += part;
            for (std::size_t i = 0; i < values.size(); ++i)
                values[i] -= (part * std::polar(1.0, 2.0 * pi * turns * static_cast<double>(i))).real();
        }
    cycle.left_over = variance(values);
    return cycle;
}

double swing(const Cycle& cycle) {
    constexpr int moments = 200;
    double low = 1e300;
    double high = -1e300;
    for (int m = 0; m < moments; ++m) {
        double sum = 0.0;
        for (int k = 0; k < harmonics; ++k)
            sum +=
                (cycle.parts[static_cast<std::size_t>(k)] * std::polar(1.0, 2.0 * pi * (k + 1) * m / moments)).real();
        low = std::min(low, sum);
        high = std::max(high, sum);
    }
    return high - low;
}

}  // namespace

std::optional<Warble> measure_warble(std::span<const double> samples, double sample_rate) {
    if (static_cast<double>(samples.size()) < least_time * sample_rate) return std::nullopt;
    Level level = level_of(samples, sample_rate);
    if (level.db.size() < 8 || !std::ranges::all_of(level.db, [](double v) { return std::isfinite(v); }))
        return std::nullopt;
    remove_trend(level.db);
    level.db = slow_part(level);
    const double whole = variance(level.db);
    if (!(whole > 0.0)) return std::nullopt;
    const double rate = strongest_rate(level, hann_window(static_cast<double>(level.db.size())));
    const Cycle cycle = cycle_at(level.db, rate / level.rate);
    const Warble warble{
        .depth_db = swing(cycle), .rate_hz = rate, .share = std::clamp(1.0 - cycle.left_over / whole, 0.0, 1.0)};
    if (warble.depth_db < warble_least_db || warble.share < warble_least_share) return std::nullopt;
    return warble;
}

}  // namespace analysis
