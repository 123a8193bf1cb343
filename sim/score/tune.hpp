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
    int bar = 1;            ///< counted from 1; an upbeat's is 0
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

/// From here on bars of so many beats of that kind.
struct Metre {
    double start = 0.0;  ///< quarter notes from the beginning; before it where an upbeat's bar would begin
    int beats = 4;
    int unit = 4;  ///< the note that counts as one: 4 is a quarter

    bool operator==(const Metre&) const = default;
};

/// Quarter notes in a bar.
double bar_length(const Metre& metre);
/// Quarter notes from one felt beat to the next: a dotted quarter in 6/8, 9/8, 12/8.
double beat_length(const Metre& metre);
/// How heavy a place is, `in_bar` quarter notes after the bar's beginning.
Stress stress_at(const Metre& metre, double in_bar);

/// One line of music: no two notes sound at once.
struct Tune {
    std::string title;
    std::vector<TuneNote> notes;  ///< in order of start, at least one
    std::vector<Tempo> tempos;    ///< the first at 0
    std::vector<Metre> metres;    ///< in order of start; the first at 0 or before; none in music without bars

    bool operator==(const Tune&) const = default;
};

/// Where a place of the tune lies in time, s from its beginning.
double seconds_at(const Tune& tune, double quarters);

}  // namespace sim::score
