// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/advice.hpp"
#include "sim/passage/simulated.hpp"

#include <string>
#include <vector>

/// What a passage asks of the bow hand, in words.
namespace sim::passage {

/// Notes that the bow can't reach in time, that no place makes sure, that are too short or too long for one stroke, and
/// that no force of the player's plays.  Kinds: "bow_too_far", "no_band", "nothing_speaks", "short_note", "long_note",
/// "no_force"; what concerns several notes is one warning at the first of them.
std::vector<Warning> bow_warnings(const score::Tune& tune, const Passage& passage);

/// What the two simulated ways gave: which notes are not Helmholtz motion, or are so but off their pitch; and where the
/// bow that follows fails, why.
std::string played_in_words(const score::Tune& tune, const Passage& passage, const SimulatedPassage& simulated);

/// The same in one sentence, without names.
std::string failing_in_words(const SimulatedPassage& simulated);

/// Why a note is not Helmholtz motion; empty where it is.
std::string why_not(const Passage& passage, std::size_t note, BowWay way, const PlayedNote& played);

/// For each note where to put the bow, to be written above it; empty where the bow stays within 3 mm of what was
/// written last.
std::vector<std::string> contact_words(const Passage& passage);

}  // namespace sim::passage
