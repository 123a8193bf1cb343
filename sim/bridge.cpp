// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/bridge.hpp"

#include <numbers>

namespace sim {

namespace {

constexpr double two_pi = 2.0 * std::numbers::pi;

std::complex<double> mode_admittance(const BridgeMode& mode, std::complex<double> s) {
    const double own = two_pi * mode.frequency;
    return s / mode.mass / (own * own + s * own / mode.q + s * s);
}

}  // namespace

std::complex<double> admittance_at(const Bridge& bridge, std::complex<double> s) {
    if (bridge.kind == BridgeKind::resistance) return 1.0 / bridge.resistance;
    std::complex<double> sum = 0.0;
    if (bridge.kind == BridgeKind::modes)
        for (const BridgeMode& mode : bridge.modes) sum += mode_admittance(mode, s);
    return sum;
}

std::complex<double> admittance(const Bridge& bridge, double hz) { return admittance_at(bridge, {0.0, two_pi * hz}); }

std::complex<double> reflection(const Bridge& bridge, double wave_impedance, double hz) {
    const std::complex<double> z0y = wave_impedance * admittance(bridge, hz);
    return (z0y - 1.0) / (z0y + 1.0);
}

double static_compliance(const Bridge& bridge) {
    double sum = 0.0;
    if (bridge.kind == BridgeKind::modes)
        for (const BridgeMode& mode : bridge.modes) {
            const double own = two_pi * mode.frequency;
            sum += 1.0 / (mode.mass * own * own);
        }
    return sum;
}

}  // namespace sim
