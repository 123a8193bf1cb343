// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/note.hpp"

#include <optional>
#include <string>
#include <vector>

namespace sim::match {

/// Where on the instrument a pitch can be played.
struct StopCandidate {
    std::string string;      ///< its name
    double stop = 0.0;       ///< semitones above the open string
    double off_cents = 0.0;  ///< by which what was heard lies above the simulated note
    Note note;
};

/// What is known of where the notes of a recording lie.
struct KnownPlace {
    std::optional<std::string> string;  ///< name
    std::optional<double> stop;         ///< semitones, on that string
    std::optional<StopEnd> end;
};

/// The nearest whole semitone on each string that holds the pitch within half a semitone, open string to the board's
/// end, the lowest stop first; at a stop that is known, within a whole one.
std::vector<StopCandidate> stop_candidates(const Preset& preset, const KnownPlace& known, double hz);

/// Lowest and highest pitch that the preset (or the one string) holds, Hz.
struct PitchEnds {
    double lowest;
    double highest;
};
PitchEnds held_pitches(const Preset& preset, const KnownPlace& known);
/// The same as names: "A2 to D6".
std::string held_range(const Preset& preset, const KnownPlace& known);

}  // namespace sim::match
