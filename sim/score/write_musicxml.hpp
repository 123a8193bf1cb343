// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/score/read_tune.hpp"

#include <span>

namespace sim::score {

/// What is written to a note.
struct NoteMarks {
    std::optional<int> finger;  ///< 1 to 4, or 0: an open string
    std::optional<int> string;  ///< counted from 1, the first string of the instrument
    std::string words;          ///< above the note; may be empty

    bool operator==(const NoteMarks&) const = default;
};

/// The tune as MusicXML with fingers and strings as the format's technical notations and words as directions; `marks`
/// one a note.  A tune that came from MusicXML keeps its document, to which only what is missing is added; any other is
/// written anew (MusicXML 4.0, by parts), notes and rests split at bar lines, with dots and tuplets.
std::string fingered_musicxml(const ReadTune& read, std::span<const NoteMarks> marks);

/// The part "anew" of the above.
std::string new_musicxml(const Tune& tune, std::span<const NoteMarks> marks);

}  // namespace sim::score
