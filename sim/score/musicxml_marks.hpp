// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/score/write_musicxml.hpp"

#include <pugixml.hpp>

/// Only for the sources of this folder: marks put into a document.
namespace sim::score {

/// Adds finger and string to the note's technical notations, where they aren't there yet.
void add_technical(pugi::xml_node note, const NoteMarks& marks);
/// Words above, as a direction before that note.
void add_words(pugi::xml_node note, const std::string& words);
/// The document as UTF-8 text, its own layout kept (or two spaces a level, if `indented`).
std::string document_text(pugi::xml_document& document, bool indented);

}  // namespace sim::score
