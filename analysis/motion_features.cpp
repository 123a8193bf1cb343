// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/motion_features.hpp"

#include "analysis/decimate.hpp"
#include "analysis/fundamental.hpp"
#include "analysis/level.hpp"
#include "analysis/partials.hpp"
#include "analysis/spectrum.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <vector>

namespace analysis {
namespace {

constexpr PitchRange wide{20.0, 4500.0};
constexpr std::size_t listed_partials = 14;
constexpr std::size_t envelope_harmonics = 6;

double clipped_db(double power_ratio, double least = -60.0) {
    return std::max(least, 10.0 * std::log10(std::max(power_ratio, 1e-12)));
}

/// Spectrum under a Hann window.
struct Powers {
    std::vector<std::complex<double>> bins;
    std::size_t length = 0;
    double hz_per_bin = 0.0;
};

Powers powers_of(const Signal& signal) {
    std::vector<double> windowed = hann_window(static_cast<double>(signal.samples.size()));
    for (std::size_t j = 0; j < windowed.size(); ++j) windowed[j] *= signal.samples[j];
    Powers powers{.bins = {}, .length = common_length(windowed.size())};
    powers.bins = spectrum(windowed, powers.length);
    powers.hz_per_bin = signal.sample_rate / static_cast<double>(powers.length);
    return powers;
}

struct Band {
    double low;   // Hz
    double high;  // Hz
};

double band_power(const Powers& powers, const Band& band) {
    double sum = 0.0;
    for (std::size_t k = 1; k < powers.bins.size(); ++k) {
        const double hz = static_cast<double>(k) * powers.hz_per_bin;
        if (hz >= band.low && hz < band.high) sum += std::norm(powers.bins[k]);
    }
    return sum;
}

/// Share of a band's power within 0.2 f of (n + offset) f.
double comb_share(const Powers& powers, double hz, double offset, const Band& band) {
    double near = 0.0;
    double all = 0.0;
    for (std::size_t k = 1; k < powers.bins.size(); ++k) {
        const double at = static_cast<double>(k) * powers.hz_per_bin;
        if (at < band.low || at >= band.high) continue;
        const double n = at / hz - offset;
        all += std::norm(powers.bins[k]);
        if (std::abs(n - std::round(n)) < 0.2) near += std::norm(powers.bins[k]);
    }
    return all > 0.0 ? near / all : 0.0;
}

/// Signal of a band, and the square of its envelope (by the analytic signal).
std::vector<double> envelope_power(const Powers& whole, const Band& band) {
    // Real and imaginary parts of the analytic signal, each by a real inverse transform.
    std::vector<std::complex<double>> real(whole.bins.size());
    std::vector<std::complex<double>> imaginary(whole.bins.size());
    for (std::size_t k = 1; k + 1 < whole.bins.size(); ++k) {
        const double hz = static_cast<double>(k) * whole.hz_per_bin;
        if (hz < band.low || hz >= band.high) continue;
        real[k] = whole.bins[k];
        imaginary[k] = whole.bins[k] * std::complex<double>(0.0, -1.0);
    }
    std::vector<double> power = inverse_spectrum(real, whole.length);
    const std::vector<double> other = inverse_spectrum(imaginary, whole.length);
    for (std::size_t j = 0; j < power.size(); ++j) power[j] = power[j] * power[j] + other[j] * other[j];
    return power;
}

/// |E_k|/E_0 of the envelope's power, k = 1 … envelope_harmonics, at multiples of a frequency.
std::array<double, envelope_harmonics> envelope_shape(const std::vector<double>& power, double sample_rate, double hz) {
    std::array<double, envelope_harmonics> shape{};
    double mean = 0.0;
    for (const double value : power) mean += value;
    if (!(mean > 0.0)) return shape;
    for (std::size_t k = 0; k < envelope_harmonics; ++k) {
        const std::complex<double> turn =
            std::polar(1.0, -2.0 * std::numbers::pi * static_cast<double>(k + 1) * hz / sample_rate);
        std::complex<double> phase = 1.0;
        std::complex<double> sum = 0.0;
        for (const double value : power) {
            sum += value * phase;
            phase *= turn;
        }
        shape[k] = std::abs(sum) / mean;
    }
    return shape;
}

/// Fourth moment over the square of the second, as dB over a sine's 1.5.
double peakedness(std::span<const double> samples) {
    double two = 0.0;
    double four = 0.0;
    for (const double x : samples) {
        two += x * x;
        four += x * x * x * x;
    }
    if (!(two > 0.0)) return 0.0;
    return 10.0 * std::log10(four * static_cast<double>(samples.size()) / (two * two) / 1.5);
}

/// Spread of the level over twelve parts of the stretch, dB.
double level_spread(std::span<const double> samples) {
    constexpr std::size_t parts = 12;
    double sum = 0.0;
    double squares = 0.0;
    for (std::size_t i = 0; i < parts; ++i) {
        const std::size_t size = samples.size() / parts;
        const double db = db_from_ratio(std::max(1e-9, rms(samples.subspan(i * size, size))));
        sum += db / parts;
        squares += db * db / parts;
    }
    return std::sqrt(std::max(0.0, squares - sum * sum));
}

}  // namespace

MotionFeatures motion_features(std::span<const double> samples, double sample_rate, const MotionContext& context) {
    MotionFeatures features{};
    const Signal signal = decimated_for_analysis(samples, sample_rate);
    std::size_t next = 0;
    const auto put = [&](double value) { features[next++] = value; };
    const double level = rms(signal.samples);
    const auto pitch = measure_fundamental(signal.samples, signal.sample_rate, wide);
    const double hz = pitch ? pitch->hz : 100.0;
    const Powers powers = powers_of(signal);
    const double all = band_power(powers, {20.0, 12000.0});
    put(context.noise > 0.0 ? std::min(3.0, db_from_ratio(std::max(level, 1e-12) / context.noise) / 20.0) : 2.0);
    put(context.loudest > 0.0 ? std::max(-3.0, db_from_ratio(std::max(level, 1e-12) / context.loudest) / 20.0) : 0.0);
    put(pitch ? 1.0 : 0.0);
    put(pitch ? pitch->clarity_db / 20.0 : -2.0);
    put(std::log2(hz / 200.0));
    put(pitch ? std::min(4.0, -std::log10(1.0 - std::min(pitch->periodicity, 0.9999))) : 0.0);
    put(level_spread(signal.samples) / 5.0);
    put(peakedness(signal.samples) / 10.0);
    // Where the power lies.
    put(clipped_db(band_power(powers, {20.0, 0.7 * hz}) / all) / 20.0);
    put(comb_share(powers, hz, 0.0, {0.5 * hz, 6.5 * hz}));
    put(comb_share(powers, hz, 0.0, {6.5 * hz, 20.5 * hz}));
    put(comb_share(powers, hz, 0.5, {0.5 * hz, 6.5 * hz}));
    put(comb_share(powers, hz, 0.5, {6.5 * hz, 20.5 * hz}));
    put(clipped_db(band_power(powers, {20.0, 250.0}) / all) / 20.0);
    put(clipped_db(band_power(powers, {250.0, 1000.0}) / all) / 20.0);
    put(clipped_db(band_power(powers, {1000.0, 3000.0}) / all) / 20.0);
    put(clipped_db(band_power(powers, {3000.0, 12000.0}) / all) / 20.0);
    // Partials.
    const auto partials = measure_partials(signal.samples, signal.sample_rate, {hz, 8000.0});
    double total = 0.0;
    for (const Partial& partial : partials) total += partial.amplitude * partial.amplitude;
    for (std::size_t n = 0; n < listed_partials; ++n)
        put(n < partials.size() ? clipped_db(partials[n].amplitude * partials[n].amplitude / total) / 20.0 : -3.0);
    const auto bright = brightness(partials, hz);
    put(bright ? std::log2(bright->brightness_f0) : 0.0);
    // How the sound is distributed over the period, in three bands.
    for (const Band& band : {Band{600.0, 2000.0}, Band{2000.0, 5000.0}, Band{5000.0, 11000.0}}) {
        const auto shape = envelope_shape(envelope_power(powers, band), signal.sample_rate, hz);
        for (const double value : shape) put(value);
    }
    put(context.intended_hz > 0.0 ? std::clamp(std::log2(hz / context.intended_hz), -4.0, 4.0) : 0.0);
    put(context.intended_hz > 0.0
            ? comb_share(powers, context.intended_hz, 0.0, {0.5 * context.intended_hz, 6.5 * context.intended_hz})
            : 0.0);
    return features;
}

}  // namespace analysis
