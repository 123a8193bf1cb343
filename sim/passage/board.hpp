// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"
#include "sim/score/tune.hpp"

#include <optional>
#include <vector>

namespace sim::passage {

/// Frequency of a written note in the preset's temperament, Hz; A4 is the reference.  Fifths are narrow by the
/// temperament's share of the syntonic comma, so that F sharp and G flat differ; rule_of_18 places frets and no
/// pitches, and counts as equal.
double written_pitch(const score::Spelling& spelling, const Preset& preset);

/// Where a written note lies on one string.
struct BoardPlace {
    double stop = 0.0;      ///< semitones above the open string
    double from_nut = 0.0;  ///< m
    double pitch = 0.0;     ///< Hz
    double cents = 0.0;     ///< of that pitch from the written note
    int fret = 0;           ///< 0 = open; past the last fret: bare board
    bool bare = false;      ///< the finger stops the string alone

    bool operator==(const BoardPlace&) const = default;
};

/// Nothing where the string or its board doesn't reach the note.
std::optional<BoardPlace> board_place(const score::Spelling& spelling, const Preset& preset, int string);

/// Semitones of a fret above the nut, by the preset's temperament.
double fret_stop(const Preset& preset, int fret);
/// m from the nut.
double from_nut(const PresetString& string, double stop);

/// Semitones of the open string above C-1.
int open_key(const PresetString& string);

}  // namespace sim::passage
