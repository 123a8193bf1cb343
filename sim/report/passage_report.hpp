// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/advice.hpp"
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

/// "run", "tune", "notes", "hand_places", "alternatives", "warnings", "remarks".
std::string passage_json(const AskedPassage& asked, const std::vector<passage::Fingering>& found);
/// A line for each note.
std::string passage_csv(const AskedPassage& asked, const std::vector<passage::Fingering>& found);
std::string passage_table(const AskedPassage& asked, const std::vector<passage::Fingering>& found);
/// Hand places with their reasons, other fingerings, warnings, and what was left out of the tune, in plain sentences.
std::string passage_in_words(const AskedPassage& asked, const std::vector<passage::Fingering>& found);
/// What is written to each note of a score: finger, string, and over the first note of each hand place its name.
std::vector<score::NoteMarks> passage_marks(const passage::Fingering& fingering);

}  // namespace sim::report
