// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/bridge.hpp"
#include "sim/measured_bridge.hpp"

#include <cmath>
#include <functional>
#include <random>
#include <string>
#include <vector>

/// Admittances worked out from modes, as a laboratory would measure them.
namespace tests {

inline sim::Bridge body(std::vector<sim::BridgeMode> modes) {
    return {.kind = sim::BridgeKind::modes, .resistance = 0.0, .modes = std::move(modes)};
}

inline sim::BridgeMode mode(double hz, double q, double kg) { return {hz, q, kg, 1.0}; }

/// Sixteen modes over four octaves, invented: as wide and as heavy as those of a bowed instrument's body.
inline sim::Bridge wide_body() {
    std::vector<sim::BridgeMode> modes;
    for (int k = 0; k < 16; ++k)
        modes.push_back(mode(110.0 * std::pow(1.19, k), 30.0 - k + 3 * (k % 3), 0.3 / (1 + k)));
    return body(modes);
}

inline std::vector<double> even_hz(double low, double high, int count) {
    std::vector<double> hz;
    for (int i = 0; i < count; ++i) hz.push_back(low + (high - low) * i / (count - 1));
    return hz;
}

inline std::vector<double> log_hz(double low, double high, int count) {
    std::vector<double> hz;
    for (int i = 0; i < count; ++i) hz.push_back(low * std::pow(high / low, static_cast<double>(i) / (count - 1)));
    return hz;
}

/// `noise`: deviation as a share of |Y|, `floor` as a share of the greatest |Y|; each by half in real and imaginary
/// part.
struct Noise {
    double noise = 0.0;
    double floor = 0.0;
    unsigned seed = 1;
};

inline sim::MeasuredBridge measured(const sim::Bridge& bridge, const std::vector<double>& hz, const Noise& noise = {}) {
    sim::MeasuredBridge result{
        .hz = hz, .admittance = {}, .usual_low = hz.front(), .usual_high = hz.back(), .remarks = {}};
    double greatest = 0.0;
    for (const double f : hz) greatest = std::max(greatest, std::abs(sim::admittance(bridge, f)));
    std::mt19937 random(noise.seed);
    std::normal_distribution<double> normal(0.0, std::sqrt(0.5));
    for (const double f : hz) {
        const std::complex<double> y = sim::admittance(bridge, f);
        const double size = std::hypot(noise.noise * std::abs(y), noise.floor * greatest);
        const double real = normal(random);
        result.admittance.push_back(y + size * std::complex<double>(real, normal(random)));
    }
    return result;
}

}  // namespace tests
