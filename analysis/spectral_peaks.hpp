// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace analysis {

/// A line of a spectrum.
struct SpectralPeak {
    double hz = 0.0;
    double power = 0.0;  ///< of the sine: half its amplitude squared

    bool operator==(const SpectralPeak&) const = default;
};

/// Which lines are looked for.
struct PeakSearch {
    double lowest_hz = 20.0;
    double highest_hz = 20000.0;
    double within_db = 40.0;  ///< of the strongest
    std::size_t most = 16;    ///< the strongest of them
};

/// Lines that stand out of what surrounds them (17 dB over the lower third of the bins within 100 Hz), strongest first.
///
/// One transform of all samples under a Blackman window of the lowest side lobes (-68 dB), which tells lines apart from
/// 4/duration Hz on; frequencies by the parabola through the logarithms of three bins.
///
/// accuracy a line alone to 0.02/duration Hz
/// threads  any
std::vector<SpectralPeak> spectral_peaks(std::span<const double> samples, double sample_rate, const PeakSearch& search);

}  // namespace analysis
