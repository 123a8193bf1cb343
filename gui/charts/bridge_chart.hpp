// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace gui::charts {

/// An admittance at one frequency.
struct AdmittanceValue {
    double hz = 0.0;
    double level_db = 0.0;  ///< re 1 m/s/N
    double phase_degrees = 0.0;

    bool operator==(const AdmittanceValue&) const = default;
};

struct ModeMark {
    double hz = 0.0;
    double level_db = 0.0;  ///< of the fitted admittance there

    bool operator==(const ModeMark&) const = default;
};

/// A measured admittance and the sum of modes fitted to it: level above, phase below, over log frequency.
///
/// Frequencies rise.  Values that are not finite are left out; of very many points the highest and lowest of each
/// pixel are drawn.
struct BridgeChart {
    std::string title;
    std::string subtitle;
    std::vector<AdmittanceValue> measured;
    std::vector<AdmittanceValue> fitted;
    std::vector<ModeMark> modes;     ///< in the range
    std::vector<std::string> notes;  ///< sentences beside the chart

    bool operator==(const BridgeChart&) const = default;
};

}  // namespace gui::charts
