// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <vector>

/// Only for the sources of this folder: lengths as notes are drawn.
namespace sim::score {

/// Ticks a quarter note in what is written: halves, thirds, fifths and sevenths down to a 64th come out whole.
inline constexpr std::int64_t ticks_a_quarter = 5040;
/// To which lengths are drawn that no note value has.
inline constexpr std::int64_t coarse_tick = ticks_a_quarter / 48;

/// A note value: its name, dots, and how many are played in the time of how many.
struct NoteValue {
    std::int64_t ticks = 0;
    const char* type = "quarter";
    int dots = 0;
    int actual = 1;
    int normal = 1;
};

/// Note values that together last so long (> 0), longest first: as few as can be of plain ones and one kind of tuplet; where
/// none do, the last is one of an unusual tuplet.
std::vector<NoteValue> note_values(std::int64_t ticks);

}  // namespace sim::score
