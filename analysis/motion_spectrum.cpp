// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/motion_spectrum.hpp"

#include "analysis/spectrum.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace analysis {
namespace {

constexpr double near_share = 0.12;      // of the spacing of a comb
constexpr double likeness_slack = 0.02;  // of a lag, within which the greatest likeness counts

/// A band's part of a spectrum brought down to 0 Hz, as a signal in time: real and imaginary part.
struct Baseband {
    std::vector<double> real;
    std::vector<double> imaginary;
    double rate = 0.0;  // Hz

    double power(std::size_t j) const { return real[j] * real[j] + imaginary[j] * imaginary[j]; }
};

Baseband baseband(std::span<const std::complex<double>> bins, double hz_per_bin) {
    const std::size_t length = fast_length(2 * (bins.size() + 2));
    std::vector<std::complex<double>> shifted(length / 2 + 1);
    std::ranges::copy(bins, shifted.begin() + 1);
    Baseband result{.real = inverse_spectrum(shifted, length), .imaginary = {}, .rate = 0.0};
    for (std::complex<double>& bin : shifted) bin *= std::complex<double>(0.0, -1.0);
    result.imaginary = inverse_spectrum(shifted, length);
    result.rate = static_cast<double>(length) * hz_per_bin;
    return result;
}

/// What the window does to the likeness at a lag, as a share of the stretch.
double hann_overlap(double share) {
    const double turn = 2.0 * std::numbers::pi * share;
    const double left = 1.0 - share;
    return left * (2.0 / 3.0 + std::cos(turn) / 3.0) + std::sin(turn) / (2.0 * std::numbers::pi);
}

void put_envelope(const Baseband& sound, double seconds, double hz, BandMotion& motion) {
    const auto count = std::min(sound.real.size(), static_cast<std::size_t>(seconds * sound.rate));
    std::array<std::complex<double>, BandMotion::harmonics> sums{};
    double whole = 0.0;
    const std::complex<double> turn = std::polar(1.0, -2.0 * std::numbers::pi * hz / sound.rate);
    std::complex<double> phase = 1.0;
    for (std::size_t j = 0; j < count; ++j) {
        const double power = sound.power(j);
        whole += power;
        std::complex<double> harmonic = 1.0;
        for (std::complex<double>& sum : sums) sum += power * (harmonic *= phase);
        phase *= turn;
    }
    if (!(whole > 0.0)) return;
    for (std::size_t k = 0; k < sums.size(); ++k) motion.envelope[k] = std::abs(sums[k]) / whole;
    // The profile is the sum of these harmonics: so it is smooth, however few samples a period has.
    std::array<double, BandMotion::phases> profile{};
    for (std::size_t p = 0; p < profile.size(); ++p) {
        profile[p] = 1.0;
        for (std::size_t k = 0; k < sums.size(); ++k) {
            const double angle = 2.0 * std::numbers::pi * static_cast<double>((k + 1) * p) / BandMotion::phases;
            profile[p] += 2.0 / whole * (sums[k] * std::polar(1.0, angle)).real();
        }
    }
    std::ranges::rotate_copy(profile, std::ranges::max_element(profile), motion.profile.begin());
}

void put_likeness(std::span<const std::complex<double>> bins, const MotionSpectrum& spectrum, double hz,
                  BandMotion& motion) {
    std::vector<std::complex<double>> powers(bins.size());
    std::ranges::transform(bins, powers.begin(), [](std::complex<double> bin) { return std::norm(bin); });
    const Baseband lags = baseband(powers, spectrum.hz_per_bin());
    const double whole = lags.power(0);
    if (!(whole > 0.0)) return;
    for (std::size_t i = 0; i < motion.likeness.size(); ++i) {
        const double lag = static_cast<double>(i + 1) / hz;
        if (lag > 0.7 * spectrum.seconds()) break;
        const double slack = std::max(likeness_slack * lag, 1.0 / lags.rate);
        const auto from = static_cast<std::size_t>((lag - slack) * lags.rate);
        const auto to = std::min(lags.real.size() - 1, static_cast<std::size_t>((lag + slack) * lags.rate) + 1);
        double most = 0.0;
        for (std::size_t j = from; j <= to; ++j) most = std::max(most, lags.power(j));
        motion.likeness[i] = std::min(1.0, std::sqrt(most / whole) / hann_overlap(lag / spectrum.seconds()));
    }
    const double longest =
        std::min({14.0 / hz, 0.5 * spectrum.seconds(), static_cast<double>(lags.real.size() / 2) / lags.rate});
    for (auto j = static_cast<std::size_t>(1.2 / hz * lags.rate) + 1; static_cast<double>(j) < longest * lags.rate;
         ++j) {
        const double lag = static_cast<double>(j) / lags.rate;
        const double likeness = std::sqrt(lags.power(j) / whole) / hann_overlap(lag / spectrum.seconds());
        if (likeness <= motion.best_likeness) continue;
        motion.best_likeness = std::min(1.0, likeness);
        motion.best_periods = lag * hz;
    }
}

}  // namespace

MotionSpectrum::MotionSpectrum(std::span<const double> samples, double sample_rate) {
    std::vector<double> windowed = hann_window(static_cast<double>(samples.size()));
    double mean = 0.0;
    for (const double sample : samples) mean += sample / static_cast<double>(samples.size());
    for (std::size_t j = 0; j < windowed.size(); ++j) windowed[j] *= samples[j] - mean;
    const std::size_t length = common_length(2 * windowed.size());
    bins_ = spectrum(windowed, length);
    sums_.assign(1, 0.0);
    for (const std::complex<double>& bin : bins_) sums_.push_back(sums_.back() + std::norm(bin));
    hz_per_bin_ = sample_rate / static_cast<double>(length);
    seconds_ = static_cast<double>(samples.size()) / sample_rate;
}

std::size_t MotionSpectrum::bin_from(double hz) const {
    return std::min(bins_.size(), static_cast<std::size_t>(std::ceil(std::max(0.0, hz / hz_per_bin_))));
}

double MotionSpectrum::power(const HzBand& band) const {
    const std::size_t from = bin_from(band.low);
    return sums_[std::max(from, bin_from(band.high))] - sums_[from];
}

double MotionSpectrum::comb_share(double hz, int parts, const HzBand& band) const {
    const double whole = power(band);
    if (!(whole > 0.0)) return 0.0;
    const double spacing = hz / parts;
    double near = 0.0;
    for (int k = 1; k * spacing < band.high; ++k) {
        if (parts > 1 && k % parts == 0) continue;
        const HzBand tooth{(k - near_share) * spacing, (k + near_share) * spacing};
        if (tooth.low >= band.low && tooth.high < band.high) near += power(tooth);
    }
    return near / whole;
}

double MotionSpectrum::refined(double near, double cents) const {
    constexpr int steps = 80;
    constexpr int multiples = 10;
    double best = near;
    double most = -1e300;
    for (int s = 0; s <= steps; ++s) {
        const double hz = near * ratio_from_semitones((2.0 * s / steps - 1.0) * cents / 100.0);
        double sum = 0.0;
        for (int n = 1; n <= multiples; ++n) {
            const auto k = static_cast<std::size_t>(std::lround(n * hz / hz_per_bin_));
            if (k < bins_.size()) sum += std::log(std::norm(bins_[k]) + 1e-30);
        }
        if (sum > most) {
            most = sum;
            best = hz;
        }
    }
    return best;
}

std::vector<MotionSpectrum::PartialPower> MotionSpectrum::partial_powers(double hz, std::size_t count,
                                                                         double highest) const {
    std::vector<PartialPower> powers;
    const double width = hz / 8.0;
    for (std::size_t n = 1; n <= count; ++n) {
        const double at = static_cast<double>(n) * hz;
        if (at + hz >= highest) break;
        PartialPower partial{.power = power({at - width, at + width})};
        const double between = 0.5 * (power({at - 0.5 * hz - width, at - 0.5 * hz + width}) +
                                      power({at + 0.5 * hz - width, at + 0.5 * hz + width}));
        if (partial.power > between) partial.share = 1.0 - between / partial.power;
        powers.push_back(partial);
    }
    return powers;
}

BandMotion band_motion(const MotionSpectrum& spectrum, const HzBand& band, double fundamental_hz) {
    const std::size_t from = spectrum.bin_from(band.low);
    const std::size_t to = spectrum.bin_from(band.high);
    BandMotion motion;
    if (from >= to) return motion;
    const auto bins = spectrum.bins().subspan(from, to - from);
    put_envelope(baseband(bins, spectrum.hz_per_bin()), spectrum.seconds(), fundamental_hz, motion);
    put_likeness(bins, spectrum, fundamental_hz, motion);
    return motion;
}

}  // namespace analysis
