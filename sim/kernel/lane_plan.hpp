// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/lane_work.hpp"
#include "sim/kernel/note.hpp"
#include "sim/kernel/wave_lines.hpp"

#include <span>

namespace sim::kernel {

/// The reference's own lines, in double, for what the lanes share: where the bow touches, what it yields.
struct LaneGeometry {
    explicit LaneGeometry(const Note& note);

    WaveLines string, twist, upright;
    Hair hair;
    double length = 0.0;      ///< m
    double hair_yield = 0.0;  ///< m/s per N, of one point
};

/// The bow at a contact point, m.
void place_bow(LaneGeometry& geometry, double contact_point, LaneBowPlace& place);

/// A note at rest in every lane.
LaneWork lane_work(const Note& note, const LaneGeometry& geometry);

/// The ideal motion of a bow speed each (m/s; 0 = rest) at one contact point, m.
void fill_with_helmholtz(LaneWork& work, const Note& note, double contact_point, std::span<const double> speeds);

/// What is left of an earlier stroke's heat in one lane, and what it leaves.
void warm(LaneWork& work, std::size_t lane, const Warmth& warmth);
Warmth warmth_of(const LaneWork& work, std::size_t lane);

}  // namespace sim::kernel
