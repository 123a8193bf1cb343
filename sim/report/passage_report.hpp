// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/advice.hpp"
#include "sim/passage/bow_words.hpp"
#include "sim/passage/fingering.hpp"
#include "sim/report/run_record.hpp"
#include "sim/score/write_musicxml.hpp"

#include <string>
#include <vector>

/// The answer of `passage` as text.
namespace sim::report {

/// What the texts of a passage speak of.
struct AskedPassage {
    RunRecord run;
    Preset preset;           ///< in force
    score::ReadTune tune;    ///< as it is played: tempo and fixed fingers in force
    std::string tune_hash;   ///< of the tune's file or line, by text_hash
    std::size_t chosen = 0;  ///< which of the fingerings the texts tell note by note
};

/// What the bow does with the chosen fingering.
struct BowedPassage {
    passage::Passage bow;
    passage::SimulatedPassage played;
};

// Without `bowed` the texts tell of the fingers alone.

/// "run", "tune", "notes", "hand_places", "alternatives", "warnings", "remarks"; with the bow "left_behind", "path".
std::string passage_json(const AskedPassage& asked, const std::vector<passage::Fingering>& found,
                         const BowedPassage* bowed = nullptr);
/// A line for each note.
std::string passage_csv(const AskedPassage& asked, const std::vector<passage::Fingering>& found,
                        const BowedPassage* bowed = nullptr);
std::string passage_table(const AskedPassage& asked, const std::vector<passage::Fingering>& found,
                          const BowedPassage* bowed = nullptr);
/// Hand places with their reasons, other fingerings, warnings, and what was left out of the tune, in plain sentences.
std::string passage_in_words(const AskedPassage& asked, const std::vector<passage::Fingering>& found,
                             const BowedPassage* bowed = nullptr);
/// What is written to each note of a score: finger, string, and over the first note of each hand place its name;
/// with the bow, where to put it wherever it moves.
std::vector<score::NoteMarks> passage_marks(const passage::Fingering& fingering, const BowedPassage* bowed = nullptr);

/// "title, instrument".
std::string passage_heading(const AskedPassage& asked);

}  // namespace sim::report
