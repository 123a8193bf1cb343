// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/stroke.hpp"

#include <optional>
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

/// Mean of a profile between two moments.
struct TimeSpan {
    double from;  ///< s
    double to;    ///< s, > from
};
double mean_value(const Profile& profile, const TimeSpan& span);

}  // namespace sim
