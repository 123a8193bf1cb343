// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/note.hpp"

namespace tests {

inline constexpr double bench_place = 0.035;  // m from the bridge

/// The division bass viol's top string an octave up, over a body of 16 modes (its own, and more of the same kind).
sim::Note bench_note();

/// Single-precision operations of one lane in one sample under the thermal law, one point of hair at a fixed place:
/// + - * / of the time loop, counted by hand in sim/kernel/lane_*-inl.h; compares, selections and the table's reads
/// are left out.
double operations_per_step(const sim::Note& note);

}  // namespace tests
