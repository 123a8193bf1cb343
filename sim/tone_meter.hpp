// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"
#include "sim/sound/render.hpp"
#include "sim/stroke.hpp"

#include <vector>

namespace sim {

/// What is heard of bridge forces over one body.  Keeps the body's gains, which cost as much as all else, from one
/// force to the next of the same length.  Not to be shared by threads.
class ToneMeter {
public:
    explicit ToneMeter(const Bridge& bridge);

    /// The end of a bridge force, already thinned out for analysis.
    struct Heard {
        analysis::Signal force;  ///< N
        double peak_to_peak;     ///< N, of the force before
        double expected_hz;      ///< pitch is looked for around here
    };
    Tone tone(const Heard& heard);

private:
    double gain(double hz) const;
    double level(const analysis::Signal& force);

    std::vector<sound::RadiatingMode> modes_;
    std::vector<double> gains_;  // of the bins, in the order in which they are asked for
    std::size_t samples_ = 0;    // to which these belong
    double sample_rate_ = 0.0;
};

}  // namespace sim
