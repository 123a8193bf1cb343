// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/bridge_fit.hpp"
#include "sim/preset.hpp"

#include <optional>
#include <string>

/// The answer of `bridge` as text.
namespace sim::report {

/// What was asked of a measurement.
struct AskedBridge {
    std::string version;          ///< of the program
    std::string file;             ///< as it was named
    std::string file_hash;        ///< of its bytes, by text_hash
    std::optional<double> scale;  ///< m/s per N s for 1 in a sound file
    BridgeFitPlan plan;
};

/// "run", the fit's error, and "bridge": what can be pasted as a preset's.
std::string bridge_json(const AskedBridge& asked, const BridgeFit& fit);
/// A line for each mode.
std::string bridge_csv(const BridgeFit& fit);
std::string bridge_table(const AskedBridge& asked, const BridgeFit& fit);
/// What to know of the fit, in plain sentences.
std::string bridge_in_words(const BridgeFit& fit);
/// "54 to 4998 Hz, 16 modes, error 0.1 dB RMS": for a chart.
std::string bridge_line(const BridgeFit& fit);

}  // namespace sim::report
