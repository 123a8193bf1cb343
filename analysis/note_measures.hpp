// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/recording.hpp"

namespace analysis {

/// Measures one note of a recording whose track, loudness and noise are known.  `samples`: its stretch to be measured.
RecordedNote measure_note(const NoteSpan& span, std::span<const double> samples, const RecordingPlan& plan,
                          const Recording& recording);

/// s from the note's start until it is clean: pitch within 25 cents of `hz` and clarity within 6 dB of `clarity_db`
/// (or over 20 dB) for 0.1 s or to the note's end.  Nothing where it never is.  Good to some 30 ms, since a pitch takes
/// 60 ms to be heard.
std::optional<double> time_to_clean(std::span<const TrackPoint> track, const NoteSpan& span, const Tone& tone);

}  // namespace analysis
