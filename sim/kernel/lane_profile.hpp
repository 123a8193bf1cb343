// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/lane_work.hpp"
#include "sim/profile.hpp"

namespace sim::kernel {

/// Walks one lane's profile from corner to corner.  Each stretch counts its own samples, so that the values depend
/// neither on the neighbours' corners nor on how the run is cut into calls.
class LaneProfile {
public:
    LaneProfile(Profile profile, double sample_rate);

    /// The next sample at which a new stretch begins; -1 = none any more.
    int next_step() const { return next_step_; }
    /// Sets the lane's ramp, if a stretch begins at this sample (or has begun before it, the first time).
    void aim(int step, LaneRamp& ramp, std::size_t lane);

private:
    int first_step_at(double time) const;

    Profile profile_;
    double sample_rate_;
    std::size_t next_ = 0;  // point at which the next stretch begins
    int next_step_ = 0;
    bool begun_ = false;
};

}  // namespace sim::kernel
