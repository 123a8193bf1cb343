// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/score/read_tune.hpp"

#include <pugixml.hpp>

#include <string>
#include <vector>

/// Only for the sources of this folder: one line of a MusicXML score, note by note.
namespace sim::score {

/// Where a note of the tune stands in the document.
struct NoteElement {
    pugi::xml_node note;    ///< that carries it; of tied ones the first, of a chord the highest
    pugi::xml_node anchor;  ///< the first of its chord, before which words can stand
};

/// The line read, and where it was read.
struct WalkedScore {
    Tune tune;
    std::vector<std::string> remarks;
    std::vector<NoteElement> elements;  ///< one a note
};

/// A document of the text, with all that stands in it; InputError with line and column for malformed text, and for
/// entities of its own.
void load_musicxml(pugi::xml_document& document, const std::string& text, const std::string& where);

/// One bar of the chosen part.
struct BarElement {
    pugi::xml_node content;  ///< holds the notes
    pugi::xml_node measure;  ///< holds the number
};
/// The bars of the part named, or of the first with notes.
std::vector<BarElement> bars_of(const pugi::xml_document& document, const std::string& where, const Part& part,
                                std::vector<std::string>& remarks);

WalkedScore walk_musicxml(const pugi::xml_document& document, const std::string& where, const Part& part);

/// Transposition from written to sounding notes.
struct Transposition {
    int diatonic = 0;
    int chromatic = 0;
};
Spelling transposed(const Spelling& written, const Transposition& by);

}  // namespace sim::score
