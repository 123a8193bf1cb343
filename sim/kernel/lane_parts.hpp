// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/lane_curve.hpp"

#include <cstddef>
#include <vector>

namespace sim::kernel {

/// Strokes that one run of the vector kernel carries, on every instruction set: so that a stroke's bits depend neither
/// on the processor nor on its neighbours.
inline constexpr std::size_t lane_count = 16;

/// Points of hair that lanes can carry, and how often each looks at the others within a sample: by then the forces
/// move by less than 1e-6 of the bow's (seen on bass and violin).  More points stand so close that this takes thousands
/// of rounds; they are left to the reference.
inline constexpr std::size_t most_lane_points = 5;
inline constexpr int lane_rounds = 12;

/// One number of each lane.
struct alignas(64) LaneRow {
    float lane[lane_count] = {};
};

/// A loss section: d = in - state; lost += take d; state += follow d.
struct LanePole {
    float take = 0.0F;
    float follow = 0.0F;
};

/// A resonance in trapezoidal form, as two rows k and s: t = feed in; w = k + t; k = w + t - (ease w + s); s += grow w,
/// s taken before it grows.  The reference in other letters, see resonance() in lane_plan.cpp.
struct LaneResonance {
    float feed = 0.0F;
    float ease = 0.0F;
    float grow = 0.0F;
};

/// Waves of one kind, and the filter at the stop.
struct LaneLine {
    bool present = false;
    std::size_t samples_to_bridge = 0;
    std::size_t samples_to_stop = 0;
    std::size_t mask = 0;
    std::size_t now = 0;
    float half_admittance = 0.0F;  // m/s per N, 1 / (2 Z)
    float fraction = 0.0F;
    std::size_t first_poles = 0;  // of the string; the others are the finger's
    std::vector<LanePole> poles;
    LaneResonance section;
    std::vector<LaneRow> toward_bridge, toward_stop;  // m/s, rings
    std::vector<LaneRow> pole_states;
    std::vector<LaneRow> section_states;  // k, s of one after another
    LaneRow fraction_in, fraction_out;
};

/// Where a point of the bow reads and pushes on lines of one kind.
struct LaneTap {
    std::size_t samples = 0;
    float near_weight = 1.0F;
    float far_weight = 0.0F;
};

/// One point of the hair at one place.
struct LanePlace {
    LaneTap string, twist;
    float yield = 0.0F;       // m/s per N, of string and twist
    float full_yield = 0.0F;  // with the hair's
    float grip = 0.0F;        // its reciprocal
};

/// The bow at one place.
struct LaneBowPlace {
    std::vector<LanePlace> points;
    std::vector<float> felt;        // m/s per N, [point][other point]
    LaneTap upright;                // of the middle
    float press = 0.0F;             // kg/s: resistance / (1 + resistance * yield) of the upright motion
    float length_per_place = 0.0F;  // string's length / contact point
};

/// Heat of one contact, see heat.hpp.  The branches' times rise.
struct LaneHeat {
    static constexpr std::size_t branches = 5;
    float renewal_per_slip = 0.0F;  // per m/s: time step / renewal length
    float layer = 0.0F;             // W/K, capacity / time step
    float sum = 0.0F;               // W/K, without renewal
    float sum_per_renewal = 0.0F;   // W/K per renewal in a time step, of the layer
    float conductance[branches] = {};
    float kept[branches] = {};       // W/K, conductance * keep
    float follow[branches] = {};     // 1 - keep
    float pull[branches] = {};       // time step / time
    float pull_once[branches] = {};  // 1 + pull
    float gone[branches] = {};       // W/K, conductance * pull
};

enum class LaneLaw { thermal, thermal_askew, coulomb, coulomb_askew, double_exponential, hyperbola };

/// What friction follows.
struct LaneContact {
    LaneLaw law = LaneLaw::coulomb;
    float static_coefficient = 0.0F;
    float sliding_coefficient = 0.0F;
    float corner_speed = 0.0F;
    bool crowded = false;  // heat per newton grows with the force
    LaneCurve curve;
    std::vector<float> table;  // value and rise to the next, one after another; empty where the curve is close
    float steps_per_kelvin = 0.0F;
    float last_step = 0.0F;
    LaneHeat heat;
};

}  // namespace sim::kernel
