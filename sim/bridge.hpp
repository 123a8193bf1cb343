// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>
#include <string>
#include <vector>

namespace sim {

/// One body mode as felt and heard at the bridge.
struct BridgeMode {
    double frequency = 0.0;  ///< Hz
    double q = 0.0;          ///< quality factor
    double mass = 0.0;       ///< kg, effective at the string's notch
    double radiation = 0.0;  ///< weight of this mode in the sound, dimensionless, may be negative

    bool operator==(const BridgeMode&) const = default;
};

enum class BridgeKind { rigid, resistance, modes };

/// What the string's end on the body yields to a force.
struct Bridge {
    BridgeKind kind = BridgeKind::rigid;
    double resistance = 0.0;        ///< kg/s, for BridgeKind::resistance
    std::vector<BridgeMode> modes;  ///< for BridgeKind::modes

    bool operator==(const Bridge&) const = default;
};

/// Driving-point admittance, m/s/N: sum of i w a_k / (w_k^2 + i w w_k/Q_k - w^2), a_k = 1/m_k; 1/R; or 0.
std::complex<double> admittance(const Bridge& bridge, double hz);

/// The same for exp(s t): s = i w, or that of a dying vibration.
std::complex<double> admittance_at(const Bridge& bridge, std::complex<double> s);

/// Reflection of a velocity wave, dimensionless: (Z0 Y - 1) / (Z0 Y + 1).
std::complex<double> reflection(const Bridge& bridge, double wave_impedance, double hz);

/// What the bridge gives to a steady pull, m/N: sum of 1/(m w^2); 0 for a rigid one.  Not for a resistance (it creeps).
double static_compliance(const Bridge& bridge);

}  // namespace sim
