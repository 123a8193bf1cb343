// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/bridge.hpp"

#include <vector>

namespace sim::kernel {

/// The body's end of the string: takes an incoming velocity wave, gives the outgoing one.
class BridgeEnd {
public:
    BridgeEnd(const Bridge& bridge, double wave_impedance, double sample_rate);

    /// m/s in, m/s out; the force on the bridge is impedance * (in - out).
    double reflect(double in);

    /// Goes on from the motion of the same body.
    void take_up(const BridgeEnd& before);

    /// Both directions of the string's motion: modes move the bridge along a line that leans `lean` (upright over
    /// bowing direction), so that each direction is felt in the other; the bowing direction alone yields as in
    /// `reflect`.
    struct Waves {
        double bowing;
        double upright;
    };
    Waves reflect(const Waves& in, double lean);

    // The numbers, for the vector kernel, which carries them in its own way.
    struct Mode {
        double g;
        double from_s1;
        double from_s2;
        double from_force;
    };
    std::size_t mode_count() const { return g_.size(); }
    Mode mode(std::size_t k) const { return {g_[k], from_s1_[k], from_s2_[k], from_force_[k]}; }
    double yield() const { return yield_; }
    double steady_reflection() const { return steady_reflection_; }

private:
    double reflect_from_modes(double in);
    double known_velocity();
    void move_on(double force);

    BridgeKind kind_;
    double impedance_;
    double steady_reflection_ = -1.0;
    // One row a mode, trapezoidal state-variable form; padded to whole groups of four.
    std::vector<double> g_, from_s1_, from_s2_, from_force_, s1_, s2_, known_;
    double yield_ = 0.0;  ///< bridge velocity per newton within the same sample
};

}  // namespace sim::kernel
