// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/track.hpp"

#include <span>
#include <vector>

namespace analysis {

/// Where one note lies in a recording, s from its start.
struct NoteSpan {
    double start = 0.0;
    double steady_from = 0.0;  ///< onset over
    double steady_to = 0.0;    ///< release begins
    double end = 0.0;
    bool pitched = false;  ///< a pitch is heard in at least a third of it

    bool operator==(const NoteSpan&) const = default;
};

/// Level from which something is played.
struct Loudness {
    double peak = 0.0;   ///< RMS that a hundredth of the points exceed
    double floor = 0.0;  ///< RMS of the quietest tenth of what has no pitch; 0 for under 0.1 s of it
    double least = 0.0;  ///< 45 dB under the peak, or 8 dB over the floor where that is more, but 6 dB under the peak
};
Loudness loudness_of(std::span<const TrackPoint> points);

/// The notes of a track, in order.
///
/// Sound is what exceeds Loudness::least for 60 ms or more; gaps under 30 ms are bridged.  A new note begins where the
/// pitch leaves that of the note so far by 70 cents for 60 ms (leaps of an octave or a twelfth: for 0.15 s), or where
/// the level falls 12 dB below what it reaches within 0.4 s on both sides (5 dB if the pitch is lost meanwhile): the
/// same pitch bowed again.  The steady part is the longest stretch within 8 dB of the note's upper quartile, and within
/// 60 cents of its median pitch where it has one.
std::vector<NoteSpan> find_notes(std::span<const TrackPoint> points);

}  // namespace analysis
