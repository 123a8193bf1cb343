// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/match/match.hpp"
#include "sim/report/run_record.hpp"
#include "sim/tempered_pitch.hpp"

#include <span>
#include <string>

/// The answer of `match` as text.
namespace sim::report {

/// What was asked.
struct AskedMatch {
    RunRecord run;
    std::string file;                ///< as it was named
    std::string file_hash;           ///< of its bytes, by file_hash
    double reference_pitch = 440.0;  ///< Hz, and temperament: from which pitches are named
    Temperament temperament = Temperament::equal;
    double region_share = 0.8;
};
/// The same as a tuning.
Tuning tuning_of(const AskedMatch& asked);

/// "run", "recording", "notes", "warnings".
std::string match_json(const AskedMatch& asked, const match::Match& match);
/// A line for each note and string that it may be on.
std::string match_csv(const AskedMatch& asked, const match::Match& match);
std::string match_table(const AskedMatch& asked, const match::Match& match);
/// What to know, in plain sentences.
std::string match_in_words(const AskedMatch& asked, const match::Match& match);

/// Is anything said of any note?
bool says_something(const match::Match& match);
/// Index of the first note of which something is said; 0 where there is none.
std::size_t first_told(const match::Match& match);
/// The strings of a note that tables show: the likeliest, and others with 0.05 of the likelihood or more.
std::span<const match::StringMatch> shown_strings(const match::NoteMatch& note);

/// "A4 on string 2, stop 7": a note for a heading.
std::string match_note_name(const AskedMatch& asked, const match::Match& match, std::size_t note);

}  // namespace sim::report
