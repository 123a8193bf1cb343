// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/batch.hpp"
#include "sim/stroke.hpp"

#include <optional>
#include <span>
#include <vector>

namespace sim {

/// What a stroke gave whose speed or force ran freely.
struct JudgedStroke {
    double sample_rate = 0.0;  ///< Hz, of the simulation
    Verdict verdict;
    std::vector<kernel::Slip> slips;  ///< the main ones
    double slipping_since = -1.0;     ///< s, start of a slip still on at the end; < 0 = none
};

/// Simulates any drive and judges it as `play` judges a steady stroke.  The ideal of the first harmonic is that of the
/// mean speed and place of the last 0.1 s.  `times` multiplies the sample rate.
JudgedStroke play_judged(const Note& note, const FreeStroke& stroke, int times = 1);

/// The same for many strokes at once, each of a note of its own that differs from the others in `force_high` alone (the
/// sample rate follows it).  Strokes that share sample rate, place and lengthwise speed go into the vector kernel
/// together; results do not depend on threads, order or neighbours.
struct FreeJob {
    double force_high;  ///< N
    FreeStroke stroke;
};
std::vector<JudgedStroke> play_judged_all(const Note& note, std::span<const FreeJob> jobs, const Workers& workers,
                                          int times = 1);

/// Mean of a profile between two moments.
struct TimeSpan {
    double from;  ///< s
    double to;    ///< s, > from
};
double mean_value(const Profile& profile, const TimeSpan& span);

}  // namespace sim
