// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <complex>
#include <cstddef>
#include <span>
#include <vector>

/// The spectrum from which motion_features reads, and what lies where in it.
namespace analysis {

struct HzBand {
    double low = 0.0;   ///< Hz
    double high = 0.0;  ///< Hz, not included
};

/// Spectrum of a stretch under a Hann window, padded to twice its length or more.
class MotionSpectrum {
public:
    /// samples  one stretch, their mean removed here
    MotionSpectrum(std::span<const double> samples, double sample_rate);

    double hz_per_bin() const { return hz_per_bin_; }
    double seconds() const { return seconds_; }  ///< of the stretch
    std::span<const std::complex<double>> bins() const { return bins_; }

    /// Index of the first bin at or over a frequency, at most the number of bins.
    std::size_t bin_from(double hz) const;
    /// Power in a band, in squares of the samples' unit, up to a factor that is the same for all bands.
    double power(const HzBand& band) const;

    /// Share of a band's power near k/`parts` times `hz` for whole k: the multiples of hz themselves where parts is 1,
    /// else those that are none.
    double comb_share(double hz, int parts, const HzBand& band) const;

    /// The frequency within `cents` of `near` whose first ten multiples hold most (mean of their levels).
    double refined(double near, double cents) const;

    /// Power within an eighth of `hz` of each multiple n hz, n = 1 … count, as far as they lie under `highest`.
    struct PartialPower {
        double power = 0.0;
        double share = 0.0;  ///< of it over what lies half-way between the partials, 0…1
    };
    std::vector<PartialPower> partial_powers(double hz, std::size_t count, double highest) const;

private:
    std::vector<std::complex<double>> bins_;
    std::vector<double> sums_;  // of the power of all bins under each
    double hz_per_bin_ = 0.0;
    double seconds_ = 0.0;
};

/// How a band's sound is laid out in time.
struct BandMotion {
    static constexpr std::size_t harmonics = 10;
    static constexpr std::size_t phases = 24;
    static constexpr std::size_t repeats = 6;
    /// |E_k|/E_0 of the envelope's power at k times the fundamental.
    std::array<double, harmonics> envelope{};
    /// The envelope's power over the period, mean 1, from its greatest on.
    std::array<double, phases> profile{};
    /// Likeness of the sound to itself 1 … 6 periods later, 0…1.
    std::array<double, repeats> likeness{};
    /// The greatest likeness between 1.2 and 14 periods later, and after how many that is.
    double best_likeness = 0.0;
    double best_periods = 0.0;
};
BandMotion band_motion(const MotionSpectrum& spectrum, const HzBand& band, double fundamental_hz);

}  // namespace analysis
