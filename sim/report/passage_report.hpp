// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/bow_words.hpp"
#include "sim/report/run_record.hpp"
#include "sim/score/read_tune.hpp"

#include <string>
#include <vector>

/// The answer of `passage` as text.
namespace sim::report {

/// What a passage's texts and chart speak of.
struct AskedPassage {
    RunRecord run;
    Preset preset;                               ///< in force
    score::ReadTune read;                        ///< with the tune
    std::vector<passage::Fingering> fingerings;  ///< the first is played
    std::vector<passage::NoteAdvice> advice;     ///< of the first, a note each
    std::vector<passage::Warning> warnings;      ///< of fingers and bow
};

/// What the bow does with it.
struct BowedPassage {
    passage::Passage bow;
    passage::SimulatedPassage played;
};

std::string passage_json(const AskedPassage& asked, const BowedPassage& bowed);
/// A line for each note.
std::string passage_csv(const AskedPassage& asked, const BowedPassage& bowed);
/// Fingers, then the bow, a line for each note in both.
std::string passage_table(const AskedPassage& asked, const BowedPassage& bowed);
/// After the table: hand places with the reasons for shifts, warnings, what the two bows gave, what was left out of the
/// tune.
std::string passage_words(const AskedPassage& asked, const BowedPassage& bowed);

/// "title, instrument": what was asked, in a line.
std::string passage_heading(const AskedPassage& asked);

}  // namespace sim::report
