// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace sim::kernel {

/// Where the heat of friction goes, all per newton of bow force (or at 1 N, where the area does not grow with it).
struct HeatPath {
    /// A stretch of a half-space that follows the contact's temperature within `time`.
    struct Branch {
        double time = 0.0;         ///< s
        double conductance = 0.0;  ///< W/K

        bool operator==(const Branch&) const = default;
    };
    double capacity = 0.0;          ///< J/K, of the contact's layer
    double renewed_capacity = 0.0;  ///< J/K, its part that goes with the hair
    double spread = 0.0;            ///< W/K, to either side in the end
    double renewal_length = 0.0;    ///< m of slip that bring fresh hair
    std::vector<Branch> branches;   ///< of either side
    bool area_grows_with_force = true;

    bool operator==(const HeatPath&) const = default;
};

/// Coefficient of friction in sliding, as a table over temperature (thermal) or a closed law over slip speed.
struct Contact {
    enum class Kind { thermal, double_exponential, hyperbola, coulomb } kind = Kind::coulomb;
    double static_coefficient = 0.0;
    double sliding_coefficient = 0.0;
    double corner_speed = 0.0;  ///< m/s
    std::vector<double> table;  ///< mu at theta = i * table_step
    double table_step = 0.0;    ///< K
    HeatPath heat;

    bool operator==(const Contact&) const = default;
};

/// What an earlier stroke left of its heat: K above ambient, of the layer and of each branch of the string's side.
/// Empty = cold.  (The hair has moved on: its side is always fresh.)
struct Warmth {
    double layer = 0.0;
    std::vector<double> string_side;

    bool operator==(const Warmth&) const = default;
};

}  // namespace sim::kernel
