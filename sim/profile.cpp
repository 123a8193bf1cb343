// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/profile.hpp"

#include <algorithm>

namespace sim {

Profile constant_profile(double value) { return {{{0.0, value}}}; }

Profile rising_profile(Rise rise) {
    if (rise.time <= 0.0) return constant_profile(rise.value);
    return {{{0.0, 0.0}, {rise.time, rise.value}}};
}

double value_at(const Profile& profile, double time) {
    const std::vector<Profile::Point>& points = profile.points;
    if (time <= points.front().time) return points.front().value;
    if (time >= points.back().time) return points.back().value;
    const auto later = std::ranges::upper_bound(points, time, {}, &Profile::Point::time);
    const Profile::Point& b = *later;
    const Profile::Point& a = *(later - 1);
    return a.value + (b.value - a.value) * (time - a.time) / (b.time - a.time);
}

double smallest_value(const Profile& profile) {
    return std::ranges::min_element(profile.points, {}, &Profile::Point::value)->value;
}

double greatest_value(const Profile& profile) {
    return std::ranges::max_element(profile.points, {}, &Profile::Point::value)->value;
}

}  // namespace sim
