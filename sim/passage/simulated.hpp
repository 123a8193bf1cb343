// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/passage.hpp"

#include <functional>
#include <optional>
#include <vector>

/// A passage played: every note a detached stroke from rest, once with the bow left behind, once following.
namespace sim::passage {

enum class BowWay { left_behind, follows };

/// The stroke that plays a note: from rest at the force chosen for it, along the bow's path or at one place; it ends a
/// tenth of the note, at most 40 ms, before the next may begin.  Nothing where the bow comes to a place where none can
/// stand: under the floor or past 0.45 of the sounding string.
std::optional<FreeStroke> note_stroke_of(const Passage& passage, const BowedNote& note, BowWay way);

/// One of them played, in double precision.
struct NoteRun {
    double sample_rate = 0.0;  ///< Hz
    kernel::Record record;
};
/// Is handed the run of a note, its whole bridge force in it; from any thread, each note and way once.
using HearRun = std::function<void(std::size_t note, BowWay way, const NoteRun& run)>;

/// What became of a note.
struct PlayedNote {
    bool bowed = false;           ///< false: no bow could stand there, and the rest is empty
    Verdict verdict;              ///< of the stroke up to its end
    Tone tone;                    ///< of its last 0.1 s, or of all of it where it is shorter
    bool too_short = false;       ///< shorter than its rise and the periods that tell Helmholtz motion
    std::optional<double> cents;  ///< from the note as it is fingered

    bool operator==(const PlayedNote&) const = default;
};

/// Both ways, a note each.
struct SimulatedPassage {
    std::vector<PlayedNote> left_behind;
    std::vector<PlayedNote> follows;

    bool operator==(const SimulatedPassage&) const = default;
};
SimulatedPassage simulate(const Passage& passage, const Workers& workers, const HearRun& hear = {});

/// Is it Helmholtz motion?
bool sounds(const PlayedNote& note);

}  // namespace sim::passage
