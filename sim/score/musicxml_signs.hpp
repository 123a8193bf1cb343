// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/score/musicxml_walk.hpp"

#include <optional>

/// Only for the sources of this folder: what single elements of a score say.
namespace sim::score {

/// The text of a child as a number; nothing where there is no such child or it holds none.
std::optional<double> number_of(pugi::xml_node parent, const char* child);

std::optional<Spelling> pitch_of(pugi::xml_node note);
std::optional<Metre> metre_of(pugi::xml_node attributes);
Transposition transposition_of(pugi::xml_node attributes);
/// Quarter notes a minute, of <sound tempo> or a metronome mark in a direction, or of <sound> itself.
std::optional<double> tempo_of(pugi::xml_node element);
/// "pp" … of <dynamics>, outermost ones cut to ppp and fff; empty for accents and none.
std::string dynamic_of(pugi::xml_node dynamics);
/// Finger 0 to 4 and string of a note's technical notations.
std::optional<int> finger_of(pugi::xml_node note);
std::optional<std::string> string_of(pugi::xml_node note);
/// Whether a tie ("start", "stop") begins or ends at the note.
bool has_tie(pugi::xml_node note, const char* type);
/// Whether the bar asks for being played again, or out of its turn.
bool asks_for_repeats(pugi::xml_node bar);

}  // namespace sim::score
