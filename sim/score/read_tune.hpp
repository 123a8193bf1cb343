// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/score/tune.hpp"

#include <optional>
#include <string>
#include <vector>

namespace sim::score {

/// Limits on what is read, so that no file makes the program run out of memory.
inline constexpr std::size_t most_notes = 20'000;
inline constexpr double longest_quarters = 100'000.0;  ///< of a whole tune
inline constexpr double longest_note = 1000.0;         ///< quarter notes
inline constexpr std::size_t most_bytes = 20'000'000;  ///< of a file, and of what a compressed one holds

/// Which line of a score with several.
struct Part {
    std::string
        name;  ///< part, by id or name (MusicXML) or track by number or name (MIDI); empty: the first with notes
    std::string voice;  ///< MusicXML only; empty: the first that the part has

    bool operator==(const Part&) const = default;
};

/// A tune, what was left out of it, and the document it came from.
struct ReadTune {
    Tune tune;
    std::vector<std::string> remarks;     ///< sentences: what was left out or taken how
    std::optional<std::string> document;  ///< the MusicXML text, where it was one
    Part part;                            ///< as it was asked for

    bool operator==(const ReadTune&) const = default;
};

/// TUNE of the commands: a file (.musicxml, .xml, .mxl, .mid, .midi; .txt with the grammar below), or a line in it.
/// InputError names the file and the place in it.
ReadTune read_tune(const std::string& file_or_line, const Part& part = {});

/// A tune in words, over one or more lines:
///
///   D4:1 E4:1/2 r:1 F#4:2      notes and rests (r), each with its length in quarter notes: 1, 1/2, 0.75;
///                              without a length, the last one given (1 at first)
///   D5:1,string=2,finger=4     string by the preset's name, finger 0 (open) to 4; either may be left out
///   tempo=72                   quarter notes a minute, from here on (60 at first)
///   beats=3/4                  the metre, from here on (4/4 at first); must stand at the beginning of a bar
///   upbeat=1                   before the first note: its bar begins with the last 1 quarter note only
///   dynamic=mf                 ppp pp p mp mf f ff fff, from here on
///   |                          means nothing; for the eye
///   # ...                      a line that begins with # is a remark
Tune parse_tune(const std::string& text, const std::string& where);

/// Standard MIDI (formats 0 and 1): the one line that a track plays.
ReadTune read_midi(const std::string& bytes, const std::string& where, const Part& part = {});

/// MusicXML, plain text of either kind (by parts or by bars).
ReadTune read_musicxml(const std::string& text, const std::string& where, const Part& part = {});

/// The score inside a compressed MusicXML file.
std::string unpacked_musicxml(const std::string& bytes, const std::string& where);

}  // namespace sim::score
