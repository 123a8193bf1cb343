// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/musicxml_marks.hpp"

#include "sim/score/musicxml_walk.hpp"

#include <array>
#include <cassert>
#include <cstring>
#include <sstream>

namespace sim::score {
namespace {

/// Notations stand before lyrics and what follows them.
pugi::xml_node notations_of(pugi::xml_node note) {
    if (const pugi::xml_node there = note.child("notations")) return there;
    for (const pugi::xml_node child : note.children())
        for (const char* later : {"lyric", "play", "listen"})
            if (std::strcmp(child.name(), later) == 0) return note.insert_child_before("notations", child);
    return note.append_child("notations");
}

bool has_technical(pugi::xml_node note, const char* name) {
    for (const pugi::xml_node notations : note.children("notations"))
        for (const pugi::xml_node technical : notations.children("technical"))
            if (technical.child(name)) return true;
    return false;
}

pugi::xml_node technical_of(pugi::xml_node note) {
    pugi::xml_node notations = notations_of(note);
    const pugi::xml_node there = notations.child("technical");
    return there ? there : notations.append_child("technical");
}

void add_number(pugi::xml_node note, const char* name, int number) {
    if (!has_technical(note, name)) technical_of(note).append_child(name).text().set(number);
}

}  // namespace

void add_technical(pugi::xml_node note, const NoteMarks& marks) {
    if (marks.finger == 0) {
        if (!has_technical(note, "open-string") && !has_technical(note, "fingering"))
            technical_of(note).append_child("open-string");
    } else if (marks.finger) {
        add_number(note, "fingering", *marks.finger);
    }
    if (marks.string) add_number(note, "string", *marks.string);
}

void add_words(pugi::xml_node note, const std::string& words) {
    if (words.empty()) return;
    pugi::xml_node direction = note.parent().insert_child_before("direction", note);
    direction.append_attribute("placement").set_value("above");
    direction.append_child("direction-type").append_child("words").text().set(words.c_str());
}

std::string document_text(pugi::xml_document& document, bool indented) {
    for (pugi::xml_node node : document.children())
        if (node.type() == pugi::node_declaration && node.attribute("encoding"))
            node.attribute("encoding").set_value("UTF-8");
    std::ostringstream out;
    for (const pugi::xml_node node : document.children()) {  // blanks between these are not kept by the parser
        node.print(out, "  ", indented ? pugi::format_indent : pugi::format_raw, pugi::encoding_utf8);
        if (!indented) out << "\n";
    }
    return out.str();
}

std::string fingered_musicxml(const ReadTune& read, std::span<const NoteMarks> marks) {
    assert(marks.size() == read.tune.notes.size());
    if (!read.document) return new_musicxml(read.tune, marks);
    pugi::xml_document document;
    load_musicxml(document, *read.document, "score");
    const WalkedScore score = walk_musicxml(document, "score", read.part);
    for (std::size_t i = 0; i < marks.size(); ++i) {
        add_technical(score.elements[i].note, marks[i]);
        add_words(score.elements[i].anchor, marks[i].words);
    }
    return document_text(document, false);
}

}  // namespace sim::score
