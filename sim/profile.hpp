// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace sim {

/// A quantity that runs straight between given moments: bow speed, bow force or contact point over time.
///
/// Before the first moment it keeps the first value, after the last one the last.  Moments rise; never empty in use.
struct Profile {
    struct Point {
        double time = 0.0;   ///< s
        double value = 0.0;  ///< in the quantity's unit

        bool operator==(const Point&) const = default;
    };
    std::vector<Point> points;

    bool operator==(const Profile&) const = default;
};

/// The same value throughout.
Profile constant_profile(double value);
/// From 0 to `value` in `rise` seconds, then steady.
struct Rise {
    double value;  ///< in the quantity's unit
    double time;   ///< s
};
Profile rising_profile(Rise rise);

/// Value at a moment, s.
double value_at(const Profile& profile, double time);
double smallest_value(const Profile& profile);
double greatest_value(const Profile& profile);

}  // namespace sim
