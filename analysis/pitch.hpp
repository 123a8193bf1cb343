// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>

namespace analysis {

/// Where a pitch is looked for, Hz, 0 < lowest < highest.
struct PitchRange {
    double lowest = 0.0;
    double highest = 0.0;

    bool operator==(const PitchRange&) const = default;
};

/// `semitones` (> 0) either side of the expected pitch: a major third unless said otherwise.
PitchRange pitch_range_around(double expected_hz, int semitones = 4);

/// How often a signal repeats, and how exactly.
struct Pitch {
    double hz = 0.0;           ///< repetitions a second
    double periodicity = 0.0;  ///< r, 0 … 1: normalised autocorrelation at one period, 1 = repeats exactly
    double clarity_db = 0.0;   ///< 10 log10(r/(1 - r)), kept within ±60 dB

    bool operator==(const Pitch&) const = default;
};

/// The pitch of the samples within `range`, or nothing: silence, not finite, no peak there, or under two periods.
///
/// r(t) = 1 - sum_j (x_j - x_(j+t))² / sum_j (x_j² + x_(j+t)²), the samples brought to 48 … 96 kHz (decimate.hpp) with
/// their mean removed.  It is exactly 1 at the period of anything periodic, however few periods the record holds.  Of
/// the peaks in the range the one of shortest period within 5 % of the highest is taken (so 2 and 3 periods are not
/// mistaken for one), then followed over 2, 4, … periods to half the record, each time interpolated between samples.
/// Noise has a pitch too, with a low clarity: judging that is the caller's.
///
/// accuracy clean tones: 0.5 cent from 8 periods up, 2 cents from 4 periods up
/// threads  any
/// source   normalised square difference as in [McLeod2005], form from memory
std::optional<Pitch> measure_pitch(std::span<const double> samples, double sample_rate, const PitchRange& range);

}  // namespace analysis
