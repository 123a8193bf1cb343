// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/note.hpp"
#include "sim/preset.hpp"

#include <optional>
#include <string_view>

namespace sim {

/// What ends the sounding string on the player's side.
enum class StopEnd { nut, fret, finger };
std::string_view stop_end_name(StopEnd end);
std::optional<StopEnd> stop_end_from_name(std::string_view name);

/// One note of one string, ready to be bowed: what all its strokes share.
struct Note {
    String string;             ///< what sounds, between bridge and stop
    double open_length = 0.0;  ///< m
    double stop = 0.0;         ///< semitones above the open string
    StopEnd end = StopEnd::nut;
    double hair_width = 0.0;  ///< m
    double floor = 0.0;       ///< m, no contact point lies nearer the bridge
    double force_high = 0.0;  ///< N, firmest usual stroke; the sample rate follows it
    Bridge bridge;
    Friction friction;
    Bow bow;
    kernel::Contact contact;  ///< made from the friction
    LoopFilter transverse;
    LoopFilter torsional;

    bool operator==(const Note&) const = default;
};

/// Nut for the open string, fret while there are frets, then the bare finger.
StopEnd usual_end(const Preset& preset, double stop);

/// Designs the loops of the note.  `stop` in semitones, 0 … last_stop; InputError past the board.
Note make_note(const Preset& preset, const PresetString& string, double stop, std::optional<StopEnd> end = {});

/// The same from an open string already made, perhaps with changed properties.  A bare finger is lossy unless the
/// string has no losses at all.
Note make_note(const Preset& preset, const String& open, double stop, std::optional<StopEnd> end = {});

/// The farthest place at which a note is bowed here: 0.45 of the sounding length, m from the bridge.
double farthest_contact(const Note& note);

/// Does a contact point lie from the floor up to the farthest?
bool can_stand(const Note& note, double contact_point);
/// It must; InputError says where it may be otherwise.
void check_contact(const Note& note, double contact_point);

/// Samples per second for a bow at this contact point: a slip of contact ratio * period holds 16 or more, the rosin's
/// runaway at release is resolved (dt mu |mu'| F / (2 Z* C) < 0.8 for the firmest usual stroke), torsion can pass the
/// bow, and the bow stands on a whole sample.  `times` multiplies it, to see convergence.
double sample_rate(const Note& note, double contact_point, int times = 1);

/// The note as the kernel wants it.
kernel::Note kernel_note(const Note& note, double sample_rate);

/// The rubbing contact as the kernel wants it; for the thermal law with the paths of heat, and the table of mu over
/// temperature made by walking steady sliding backwards: at slip speed u the contact is theta = mu u / loss(u) warm.
kernel::Contact kernel_contact(const Friction& friction);

}  // namespace sim
