// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/lane_parts.hpp"

#include <cstdint>
#include <vector>

namespace sim::kernel {

/// What one point of the hair remembers.
struct LanePointRows {
    LaneRow stretch, speed;      // m, m/s, of the hair
    LaneRow force;               // N
    LaneRow free_velocity;       // m/s, of the string's surface, but for this sample's forces
    LaneRow slips;               // 1 where the last sample slipped
    LaneRow slip;                // m/s
    LaneRow power, owed, layer;  // W per newton, K
    LaneRow string_side[LaneHeat::branches];
    LaneRow hair_side[LaneHeat::branches];
};

/// A quantity that runs straight: base + slope * age, age in samples.
struct LaneRamp {
    LaneRow base, slope, age;
    bool flat = true;
};

/// All that the time loop reads and writes.
struct LaneWork {
    LaneLine string, twist, upright;
    std::vector<LaneResonance> modes;
    std::vector<LaneRow> mode_states;  // k, s of one after another
    LaneRow known;                     // m/s, the bridge's but for the force of this sample
    float impedance = 0.0F;
    float bridge_yield = 0.0F;
    float steady_reflection = -1.0F;
    float lean = 0.0F;

    LaneContact contact;
    std::vector<LanePointRows> points;
    float share = 1.0F;  // of a point
    bool gives = false;
    float stiffness = 0.0F, inertia = 0.0F, hair_yield = 0.0F, time_step = 0.0F;

    LaneRamp speed, force;
    LaneRow lengthwise;
    LaneRow slipping;  // 1 while a slip lasts that SlipWatch would note
    LaneRow distance;  // m, of it
    LaneRow late;      // 1 from the second half of the run on
    LaneRow late_slips;
    LaneRow insane;  // 1 once numbers have left all sense
};

/// What one call advances and writes.
struct LaneBlock {
    int steps = 0;
    const LaneBowPlace* places = nullptr;
    bool moves = false;               // a place a step, else one for all
    LaneRow* bridge_force = nullptr;  // N, [steps]
    LaneRow* distance = nullptr;      // m, [steps]
    std::uint32_t* turns = nullptr;   // [steps], bit i: lane i begins a slip; bit 16 + i: ends one
    LaneRow* velocity = nullptr;      // these four: [steps], or none
    LaneRow* friction = nullptr;
    LaneRow* temperature = nullptr;
    LaneRow* slips = nullptr;
};

/// Advances all lanes, on the best instruction set there is.  Flush-to-zero must be on (LaneArithmetic).
void advance_lanes(LaneWork& work, const LaneBlock& block) noexcept;

/// Every step-th sample of rows after a symmetric low-pass of an odd number of taps.
struct LaneThinning {
    std::vector<float> taps;
    std::size_t step = 1;
    std::size_t outputs = 0;
};
void thin_lanes(const LaneRow* rows, const LaneThinning& thinning, LaneRow* out) noexcept;

/// Greatest less least of each lane over count >= 1 rows.
void span_of_lanes(const LaneRow* rows, std::size_t count, LaneRow* out) noexcept;

}  // namespace sim::kernel
