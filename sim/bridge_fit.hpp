// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/bridge.hpp"
#include "sim/measured_bridge.hpp"
#include "sim/passivity.hpp"

#include <optional>
#include <string>
#include <vector>

namespace sim {

struct HzRange {
    double low;
    double high;

    bool operator==(const HzRange&) const = default;
};

/// How modes are to be fitted.
struct BridgeFitPlan {
    std::optional<int> modes;      ///< in the range, 1 … most_fitted_modes; without it the error decides
    std::optional<HzRange> range;  ///< Hz; without it the measurement's own, 20 Hz to 10 kHz at the most
};
inline constexpr int most_fitted_modes = 40;
inline constexpr int most_chosen_modes = 24;  ///< where the error decides

/// How far |Y| and phase of the modes' sum lie from the measured ones; points count by their log-frequency width.
struct FitError {
    double rms_db = 0.0;
    double worst_db = 0.0;  ///< fitted over measured
    double worst_hz = 0.0;
    double rms_phase = 0.0;  ///< rad

    bool operator==(const FitError&) const = default;
};

/// Modes whose sum is the measured admittance.  All masses are positive and all modes decay: the sum is passive and
/// stable at every frequency.
struct BridgeFit {
    HzRange range{0.0, 0.0};          ///< that was fitted
    std::size_t points = 0;           ///< in it
    std::vector<BridgeMode> modes;    ///< frequencies rising, radiation 1; numbers at 6 significant digits
    std::vector<BridgeMode> outside;  ///< those among `modes` beyond the range, which stand for all that lies there
    FitError error;
    Passivity passivity;               ///< of the measurement
    std::vector<std::string> remarks;  ///< sentences: the measurement's, and what to know of the fit
};

/// Fits modes to a measurement: poles by vector fitting, masses by non-negative least squares, all polished together,
/// the least needed left out one by one.  `where` names the measurement in errors.
///
/// InputError if too few points lie in the range, if the real part is below 0 by more than noise (saying at which Hz,
/// and whether it looks like an acceleration, a displacement or a turned sign instead), if the masses come out absurd
/// (a slip of units), or if no sum of modes comes within 6 dB (unless the number of modes was given).
BridgeFit fit_bridge(const MeasuredBridge& measured, const BridgeFitPlan& plan, const std::string& where);

/// The fitted modes as a bridge.
Bridge bridge_of(const BridgeFit& fit);

}  // namespace sim
