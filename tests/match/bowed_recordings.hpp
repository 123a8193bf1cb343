// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"
#include "sim/batch.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// Simulated recordings whose contact points are known, to design and to test what finds them.
namespace tests {

/// One stroke of a recording.
struct BowedNote {
    std::string string;
    double stop = 0.0;           ///< semitones
    double hz = 0.0;             ///< of the string, stopped
    double contact_ratio = 0.0;  ///< true one
    double force = 0.0;          ///< N
    double from = 0.0;           ///< s in the recording
    double to = 0.0;
};

struct BowedRecording {
    std::string preset;
    analysis::Signal sound;
    std::vector<BowedNote> notes;
};

struct BowedPlan {
    std::vector<std::string> presets;
    std::uint32_t seed = 1;
    int recordings = 100;
    int notes = 1;           ///< in each
    double noise_db = 40.0;  ///< white, under the RMS of the sound
    bool speaking = true;    ///< else strokes in tune that are not in Helmholtz motion
    /// How far losses, twist and stiffness of the strings lie from the preset's, each by its own factor, ln, at the
    /// most.
    double string_change = 0.0;
};

/// Strokes from rest, at the player's speed and forces (even in ratio), at places even in ratio from the floor to 0.45
/// of the string, that speak as `sim::speaks` says within 40 cents of the note; any string (one to a
/// recording), stops to 19.  The body is
/// not the preset's: its modes are thrown anew, 3 to 5 an octave to 6 kHz, with Q, signs and weights of their own, and
/// masses about as great.
std::vector<BowedRecording> bowed_recordings(const BowedPlan& plan, const sim::Workers& workers);

}  // namespace tests
