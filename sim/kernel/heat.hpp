// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/contact.hpp"

#include <vector>

namespace sim::kernel {

/// The warmth of a rubbing contact, sample by sample, by implicit steps (stable and passive at any rate).
///
/// Order within a sample: begin, temperature_with as often as wanted, finish.
class Heat {
public:
    Heat(const HeatPath& path, double time_step, const Warmth& warmth);

    /// A new sample, in which the hair slips through at `slip_speed` >= 0 m/s.
    void begin(double slip_speed);
    /// K above ambient at its end, if `power` W per newton went into the layer.
    double temperature_with(double power) const { return (inflow_ + power) / sum_; }
    void finish(double power);

    /// Goes on from the warmth of a contact of the same heat path.
    void take_up(const Heat& before);

    double temperature() const { return layer_; }  ///< K above ambient
    Warmth warmth() const;

    double stored() const;  ///< J per newton in layer and branches
    double lost() const;    ///< W per newton in the last sample: spread out, and gone with the hair

private:
    const HeatPath& path_;
    double time_step_;
    double layer_;
    double renewal_ = 0.0;                    // 1/s, in this sample
    double inflow_ = 0.0;                     // W, what layer and branches give from the sample before
    double sum_ = 1.0;                        // W/K, what they take up
    double stuck_sum_ = 0.0;                  // the same without slip
    std::vector<double> string_, hair_;       // K, one a branch
    std::vector<double> pull_, keep_, left_;  // time step / time of a branch; share of its warmth that a sample leaves
};

/// What the string's side keeps of it `seconds` after the bow was lifted.
Warmth rested(const HeatPath& path, const Warmth& warmth, double seconds);

}  // namespace sim::kernel
