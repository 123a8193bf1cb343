// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"
#include "sim/batch.hpp"
#include "sim/stroke.hpp"

#include <functional>
#include <span>
#include <vector>

namespace sim {

/// Simulates and judges many strokes of one note, in their order.
///
/// A ribbon of more points than the vector kernel carries is always played by the reference.
/// Strokes that share contact point and lengthwise speed go into the vector kernel together, up to 16 at a time;
/// such packs are shared over the threads.  Each result depends on its own stroke alone: not on the threads, the order
/// or the neighbours.  The kernel stops within some milliseconds when asked to.
std::vector<StrokeResult> play_all(const Note& note, std::span<const Stroke> strokes, const Workers& workers,
                                   int times = 1);

/// Takes the end of a stroke's bridge force (N, thinned out for analysis: about 0.1 s) and what it was judged to be.
/// Called from any thread, once a stroke.
using StrokeTaker = std::function<void(std::size_t stroke, const analysis::Signal& force, const StrokeResult& result)>;

/// The same, each stroke's end handed over too; all strokes must last equally long.
std::vector<StrokeResult> play_all_heard(const Note& note, std::span<const Stroke> strokes, const Workers& workers,
                                         const StrokeTaker& take);

/// Is a note played by the vector kernel?  Where it was asked for, and carries the hair's points.
bool plays_in_lanes(const Note& note, const Workers& workers);

/// How many strokes a kernel advances together.
std::size_t strokes_at_once(Kernel kernel);

/// From the ideal Helmholtz motion, as long as held runs last.
Stroke held_stroke(const Note& note, const Player& player, const Touch& touch);

}  // namespace sim
