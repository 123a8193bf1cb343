// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/fingering.hpp"

#include <optional>
#include <string>
#include <vector>

namespace sim::passage {

/// An open string against which a stopped note can be tuned by ear.
struct OpenCheck {
    int string = 0;        ///< index into Preset::strings
    std::string interval;  ///< "unison", "octave", "two octaves", "fifth", "fourth"
    bool note_is_above = true;

    bool operator==(const OpenCheck&) const = default;
};

/// What helps with one note.
struct NoteAdvice {
    std::string stop;                   ///< the stop in words: "fret 4", "bare board, 31 mm above the guide fret"
    std::optional<OpenCheck> check;     ///< the best there is: unison before octave, fifth and fourth
    std::optional<double> to_previous;  ///< m along the board between the fingers' stops, upwards > 0; nothing beside
                                        ///< an open string and across a shift
    std::optional<double> to_next;      ///< likewise to the next note

    bool operator==(const NoteAdvice&) const = default;
};

/// Advice for each note of the fingering.
std::vector<NoteAdvice> note_advice(const score::Tune& tune, const Preset& preset, const Fingering& fingering);

/// What to beware of, in words.
struct Warning {
    std::size_t note = 0;
    std::string kind;  ///< "fret_to_bare", "crowded", "out_of_tune"
    std::string text;  ///< a sentence that names bar and note

    bool operator==(const Warning&) const = default;
};

/// Jumps between frets and bare board; stops of two fingers nearer each other than a finger's pad is long; frets that
/// are off the written note by more than the player's tolerance.
std::vector<Warning> fingering_warnings(const score::Tune& tune, const Preset& preset, const Fingering& fingering,
                                        const FingeringWeights& weights = {});

}  // namespace sim::passage
