// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

/// Tunes as they are written: read from MusicXML, MIDI or a line of note names, and written back.
namespace sim::score {

/// How a pitch is written: F sharp is no G flat.
struct Spelling {
    char step = 'C';  ///< 'A' … 'G'
    int alter = 0;    ///< semitones, -2 … 2
    int octave = 4;   ///< scientific: 4 begins at middle C

    bool operator==(const Spelling&) const = default;
};

/// "Bb3", "F#4", as preset strings are named.
std::string spelling_name(const Spelling& spelling);
/// Semitones above C-1: 60 is middle C, 69 is A4.
int key_number(const Spelling& spelling);

/// How heavily the bar stresses a place.
enum class Stress { downbeat, beat, offbeat };

/// One note to be played; notes that a tie joins are one.
struct TuneNote {
    Spelling spelling;
    double start = 0.0;     ///< quarter notes from the beginning, >= 0
    double duration = 0.0;  ///< quarter notes, > 0
    int bar = 1;            ///< counted from 1
    Stress stress = Stress::downbeat;
    std::string dynamic;                ///< in force here: "pp" … "ff"; empty where none was written yet
    std::optional<std::string> string;  ///< of the preset, where the tune names one
    std::optional<int> finger;          ///< 0 = open … 4, where the tune gives one

    bool operator==(const TuneNote&) const = default;
};

/// From here on so many quarter notes a minute.
struct Tempo {
    double start = 0.0;  ///< quarter notes from the beginning
    double quarters_a_minute = 0.0;

    bool operator==(const Tempo&) const = default;
};

/// One line of music: no two notes sound at once.
struct Tune {
    std::string title;
    std::vector<TuneNote> notes;  ///< in order of start, at least one
    std::vector<Tempo> tempos;    ///< the first at 0

    bool operator==(const Tune&) const = default;
};

/// Where a place of the tune lies in time, s from its beginning.
double seconds_at(const Tune& tune, double quarters);

}  // namespace sim::score
