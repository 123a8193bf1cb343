// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/contact.hpp"

#include <cstddef>

namespace sim::kernel {

/// mu over temperature in pieces of fourth order, few enough for the processor's own registers: piece i holds from i to
/// i + 1 of a place that rises with temperature at three rates one after another, quickest where the curve bends most.
/// A law that jumps (layers far thicker than usual) is read from a table instead.
struct LaneCurve {
    static constexpr std::size_t pieces = 32;
    static constexpr std::size_t ramps = 3;
    static constexpr std::size_t terms = 5;
    float from[ramps] = {};                      // K
    float wide[ramps] = {};                      // K
    float per_kelvin[ramps] = {};                // pieces
    alignas(64) float term[terms][pieces] = {};  // of the part of a piece gone through, rising powers
};

/// The thermal law's table as pieces that meet it at their ends and at three places between: with the usual constants
/// within 1e-5 (tested), about as close as the table itself is to the law it stands for.
LaneCurve lane_curve(const Contact& contact);

/// Within 1e-4 of mu everywhere?  Not where the law jumps.
bool close_to_table(const LaneCurve& curve, const Contact& contact);

/// mu at a temperature, K above ambient, as the lanes take it from the curve, but in double precision.
double coefficient_on(const LaneCurve& curve, double temperature);

}  // namespace sim::kernel
