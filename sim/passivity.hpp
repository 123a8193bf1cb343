// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>
#include <optional>
#include <span>
#include <vector>

namespace sim {

/// Points of a measured admittance, frequencies rising.
struct AdmittancePoints {
    std::span<const double> hz;
    std::span<const std::complex<double>> admittance;  ///< m/s/N
};

/// How far the real part of an admittance lies below 0.  A body that is pushed at one point takes power in at every
/// frequency, so Re Y >= 0; what is measured of it may fall short by noise.
struct Passivity {
    /// Power comes out over several neighbouring points, by more than their own scatter allows.
    struct Breach {
        double hz;          ///< where it is worst
        double real_share;  ///< mean of Re Y over mean of |Y| there
    };
    std::optional<Breach> breach;
    double noise_share = 0.0;  ///< of the points, each by the log-frequency width it stands for: Re Y < -0.1 |Y|
    double worst_share = 0.0;  ///< least Re Y / |Y| of any point
};

inline constexpr double tolerated_real_share = 0.1;    ///< -Re Y / |Y|: 6 degrees beyond a quarter turn
inline constexpr double tolerated_noise_share = 0.25;  ///< of the points

/// Looks at runs of 3 points or a quarter-tone, whichever is longer.
Passivity passivity(const AdmittancePoints& points);

/// No breach, and no more noise than is tolerated.
bool is_passive(const Passivity& passivity);

/// Log-frequency width that each point stands for, at most a quarter-tone (so that few low points don't outweigh all).
std::vector<double> log_widths(std::span<const double> hz);

}  // namespace sim
