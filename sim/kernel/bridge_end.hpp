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

    /// Both directions of the string's motion: modes move the bridge along a line that leans `lean` (upright over
    /// bowing direction), so that each direction is felt in the other; the bowing direction alone yields as in
    /// `reflect`.
    struct Waves {
        double bowing;
        double upright;
    };
    Waves reflect(const Waves& in, double lean);

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
