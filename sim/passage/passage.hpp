// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/force_window.hpp"
#include "sim/passage/fingering.hpp"
#include "sim/passage/note_stroke.hpp"
#include "sim/security.hpp"

#include <optional>
#include <vector>

namespace sim::passage {

/// How the bow may move from note to note, and how finely its places are sought.
struct BowPlan {
    double travel = 0.03;         ///< m/s along the string while it bows; common practice, no source
    double lifted_travel = 0.15;  ///< m/s in rests; likewise
    MapGrid grid{.contact_points = 32, .player_forces = 12, .more_forces = 0};

    bool operator==(const BowPlan&) const = default;
};

/// A note of one string played in one way: what notes share that sound alike.
struct NoteKind {
    Note note;
    Player player;  ///< of this stroke: forces, speed and rise scaled
    BandResult band;
};

/// One note under the bow.
struct BowedNote {
    int kind = 0;           ///< index into Passage::kinds
    double start = 0.0;     ///< s
    double duration = 0.0;  ///< s
    NoteStroke stroke;
    bool short_note = false;    ///< may be over before the string speaks in full
    double from = 0.0;          ///< m, where the bow is as the note begins …
    double to = 0.0;            ///< … and as it ends
    double contact = 0.0;       ///< m, in the middle of its way
    Security security;          ///< there
    Security left_behind;       ///< where the bow is left behind
    ForceWindow speaking;       ///< forces that speak at `contact`, edges to 2 %
    double force = 0.0;         ///< N: middle of those that lie in the stroke's range
    bool force_speaks = false;  ///< false: none does, and the force is the middle of the range

    bool operator==(const BowedNote&) const = default;
};

/// A tune under the bow.
struct Passage {
    BowPlan plan;
    std::vector<NoteKind> kinds;
    std::vector<BowedNote> notes;  ///< as many as the tune has
    Profile path;                  ///< m from the bridge over s
    std::size_t lowest = 0;        ///< the note whose best place the bow left behind keeps
    double left_behind = 0.0;      ///< m
};

// What is bowed at the most: a simulation plays every note, and its sound is kept whole.
inline constexpr std::size_t most_bowed_notes = 2000;
inline constexpr double longest_bowed_note = 60.0;       ///< s
inline constexpr double longest_bowed_passage = 1200.0;  ///< s

/// Where to bow each note, and how the bow gets there: the path of the greatest security over all notes, each counted
/// alike, within what the bow can travel.  A way of 10 mm must win 1/24 of one note's security, as much as chance
/// gives; of places alike the one nearer to a note's best is taken.
///
/// The bow left behind stays where it suited the note of the longest sounding string, the first of them.
/// Each string and stop is worked out once for each way of playing it; the results do not depend on the threads.
/// InputError past the limits above.
Passage find_passage(const score::Tune& tune, const Fingering& fingering, const Preset& preset, const BowPlan& plan,
                     const Workers& workers);

inline const NoteKind& kind_of(const Passage& passage, const BowedNote& note) {
    return passage.kinds[static_cast<std::size_t>(note.kind)];
}

}  // namespace sim::passage
