// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/passage.hpp"

#include <memory>
#include <vector>

namespace sim::passage {

/// The strokes that tell how sure each place of a kind of note is.
struct KindStudy {
    StrokeMap map;
    Assessment assessment;

    KindStudy(StrokeMap played, const Player& player) : map(std::move(played)), assessment(map, player) {}
    KindStudy(const KindStudy&) = delete;  // the assessment reads the map beside it
    KindStudy& operator=(const KindStudy&) = delete;
};

/// Sorts the notes into kinds, whose bands are still to be found, and tells each its kind.  Of one kind are notes on
/// one string and stop whose strokes have the same force, speed and rise.
std::vector<NoteKind> kinds_of(std::vector<BowedNote>& notes, const Fingering& fingering, const Preset& preset);

/// Plays the map of each kind and finds its band.
std::vector<std::unique_ptr<KindStudy>> study_kinds(std::vector<NoteKind>& kinds, const MapGrid& grid,
                                                    const Workers& workers);

}  // namespace sim::passage
