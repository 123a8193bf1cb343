// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// Only for the sources of this folder: what a standard MIDI file holds of notes and time.
namespace sim::score {

/// Times are in ticks from the beginning.
struct MidiNote {
    std::int64_t start = 0;
    std::int64_t end = 0;
    int key = 60;
    int velocity = 64;
};
struct MidiTempo {
    std::int64_t start = 0;
    int microseconds_a_quarter = 500'000;
};
struct MidiMetre {
    std::int64_t start = 0;
    int beats = 4;
    int unit_power = 2;  ///< 2 is a quarter
};
struct MidiTrack {
    std::string name;
    std::vector<MidiNote> notes;  ///< in order of start; those of the drum channel are left out
};
struct MidiFile {
    int ticks_a_quarter = 0;
    std::vector<MidiTrack> tracks;
    std::vector<MidiTempo> tempos;  ///< of all tracks, in order of start
    std::vector<MidiMetre> metres;
    int sharps = 0;  ///< of the first key signature, flats below 0
};

/// InputError naming the place, in bytes, where the file breaks off or makes no sense, and for formats and time bases
/// that hold no bars.
MidiFile midi_file(std::string_view bytes, const std::string& where);

}  // namespace sim::score
