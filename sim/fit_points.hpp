// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/bridge.hpp"
#include "sim/passivity.hpp"

#include <complex>
#include <span>
#include <vector>

namespace sim {

/// A point that modes are fitted to.
struct FitPoint {
    double omega;            ///< rad/s
    std::complex<double> y;  ///< m/s/N
    double share;            ///< of the whole, by the log-frequency width it stands for; all sum to 1
    double count;            ///< of measured points put together in it
    double weight;           ///< of a deviation of 1 m/s/N; its square holds `share`
};

/// The measured points, neighbours put together where they stand closer than `apart` of their frequency; weights make
/// a deviation count by its size against |Y| about there, as it does in dB.
std::vector<FitPoint> fit_points(const AdmittancePoints& points, double apart);

/// The same where neighbours are put together only as far as these modes run straight between them.
std::vector<FitPoint> fit_points(const AdmittancePoints& points, std::span<const BridgeMode> modes);

/// Weights that also know the noise: it is read from how roughly the deviations from `modes` run from point to point.
/// A deviation then counts against 0.5 % of |Y| and that noise together.
void weigh_by_noise(std::vector<FitPoint>& points, std::span<const BridgeMode> modes);

/// Sum of the modes' admittances at one frequency, m/s/N.
std::complex<double> sum_of(std::span<const BridgeMode> modes, double omega);

/// Sum of the squares of all weighted deviations, an average over the range.
double misfit(std::span<const FitPoint> points, std::span<const BridgeMode> modes);

}  // namespace sim
