// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/bridge_end.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sim::kernel {

BridgeEnd::BridgeEnd(const Bridge& bridge, double wave_impedance, double sample_rate)
    : kind_(bridge.kind), impedance_(wave_impedance) {
    if (kind_ == BridgeKind::resistance)
        steady_reflection_ = (wave_impedance / bridge.resistance - 1.0) / (wave_impedance / bridge.resistance + 1.0);
    if (kind_ != BridgeKind::modes) return;
    const std::size_t padded = (bridge.modes.size() + 3) / 4 * 4;
    for (auto* row : {&g_, &from_s1_, &from_s2_, &from_force_, &s1_, &s2_, &known_}) row->assign(padded, 0.0);
    for (std::size_t k = 0; k < bridge.modes.size(); ++k) {
        const BridgeMode& mode = bridge.modes[k];
        const double omega = 2.0 * std::numbers::pi * mode.frequency;
        const double g = std::tan(std::min(omega / (2.0 * sample_rate), 0.49 * std::numbers::pi));
        g_[k] = g;
        from_s1_[k] = 1.0 / (1.0 + g * (g + 1.0 / mode.q));
        from_s2_[k] = from_s1_[k] * g;
        from_force_[k] = from_s2_[k] / (mode.mass * omega);
        yield_ += from_force_[k];
    }
}

void BridgeEnd::take_up(const BridgeEnd& before) {
    std::ranges::copy(before.s1_, s1_.begin());
    std::ranges::copy(before.s2_, s2_.begin());
}

double BridgeEnd::reflect(double in) {
    return kind_ == BridgeKind::modes ? reflect_from_modes(in) : steady_reflection_ * in;
}

/// The bridge's velocity in this sample but for the force of this sample.
double BridgeEnd::known_velocity() {
    const std::size_t count = g_.size();
    double sum[4] = {0.0, 0.0, 0.0, 0.0};
    for (std::size_t k = 0; k < count; k += 4)
        for (std::size_t j = 0; j < 4; ++j) {
            known_[k + j] = from_s1_[k + j] * s1_[k + j] - from_s2_[k + j] * s2_[k + j];
            sum[j] += known_[k + j];
        }
    return (sum[0] + sum[1]) + (sum[2] + sum[3]);
}

void BridgeEnd::move_on(double force) {
    const std::size_t count = g_.size();
    for (std::size_t k = 0; k < count; ++k) {
        const double velocity = known_[k] + from_force_[k] * force;
        const double spring = s2_[k] + g_[k] * velocity;
        s1_[k] = 2.0 * velocity - s1_[k];
        s2_[k] = 2.0 * spring - s2_[k];
    }
}

/// Solves F = Z0 (2 in - v) together with v = Y F of this very sample, then moves every mode on by it.
double BridgeEnd::reflect_from_modes(double in) {
    const double known = known_velocity();
    const double force = impedance_ * (2.0 * in - known) / (1.0 + impedance_ * yield_);
    move_on(force);
    return known + yield_ * force - in;
}

/// A mode feels bowing + lean * upright force and moves the string's end by (v, lean v).
BridgeEnd::Waves BridgeEnd::reflect(const Waves& in, double lean) {
    if (kind_ != BridgeKind::modes) return {steady_reflection_ * in.bowing, steady_reflection_ * in.upright};
    const double known = known_velocity();
    const double pushed = 2.0 * impedance_ * (in.bowing + lean * in.upright);
    const double both = impedance_ * (1.0 + lean * lean);
    const double force = (pushed - both * known) / (1.0 + both * yield_);
    move_on(force);
    const double velocity = known + yield_ * force;
    return {velocity - in.bowing, lean * velocity - in.upright};
}

}  // namespace sim::kernel
