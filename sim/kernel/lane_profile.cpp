// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/lane_profile.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace sim::kernel {

LaneProfile::LaneProfile(Profile profile, double sample_rate)
    : profile_(std::move(profile)), sample_rate_(sample_rate) {}

/// The first sample that does not lie before `time`.
int LaneProfile::first_step_at(double time) const {
    int step = std::max(0, static_cast<int>(std::floor(time * sample_rate_)) - 1);
    while (step / sample_rate_ < time) ++step;
    return step;
}

void LaneProfile::aim(int step, LaneRamp& ramp, std::size_t lane) {
    if (begun_ && step != next_step_) return;
    begun_ = true;
    const auto& points = profile_.points;
    const double time = step / sample_rate_;
    while (next_ < points.size() && points[next_].time <= time) ++next_;
    const bool straight = next_ == 0 || next_ == points.size();
    ramp.base.lane[lane] = static_cast<float>(value_at(profile_, time));
    ramp.slope.lane[lane] = 0.0F;
    ramp.age.lane[lane] = 0.0F;
    if (!straight) {
        const Profile::Point& a = points[next_ - 1];
        const Profile::Point& b = points[next_];
        ramp.slope.lane[lane] = static_cast<float>((b.value - a.value) / (b.time - a.time) / sample_rate_);
    }
    next_step_ = next_ < points.size() ? first_step_at(points[next_].time) : -1;
}

}  // namespace sim::kernel
