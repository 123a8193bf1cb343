// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/errors.hpp"
#include "sim/preset_reader.hpp"
#include "sim/score/musicxml_walk.hpp"

#include <algorithm>
#include <cstring>

namespace sim::score {
namespace {

constexpr unsigned keep_everything = pugi::parse_full | pugi::parse_ws_pcdata;

std::string line_and_column(const std::string& text, std::ptrdiff_t offset) {
    const auto end = text.begin() + std::clamp(offset, std::ptrdiff_t{0}, static_cast<std::ptrdiff_t>(text.size()));
    const auto line = 1 + std::count(text.begin(), end, '\n');
    const auto line_begin = std::find(std::make_reverse_iterator(end), text.rend(), '\n').base();
    return "line " + std::to_string(line) + ", column " + std::to_string(1 + (end - line_begin));
}

/// A document type may name its definition, but not define entities of its own, which could grow without end.
void refuse_own_entities(const pugi::xml_document& document, const std::string& where) {
    for (const pugi::xml_node node : document.children())
        if (node.type() == pugi::node_doctype && std::strpbrk(node.value(), "[") != nullptr)
            throw analysis::InputError(
                where, "its DOCTYPE defines things of its own ([ … ]), which are not read; save it without them");
}

bool has_notes(const std::vector<BarElement>& bars) {
    return std::ranges::any_of(bars, [](const BarElement& bar) {
        return !bar.content.find_child([](pugi::xml_node n) { return !n.child("pitch").empty(); }).empty();
    });
}

/// A part as the score lists it.
struct ListedPart {
    std::string id;
    std::string name;
};

std::vector<ListedPart> listed_parts(const pugi::xml_node& score) {
    std::vector<ListedPart> parts;
    for (const pugi::xml_node part : score.child("part-list").children("score-part"))
        parts.push_back({part.attribute("id").value(), part.child("part-name").text().get()});
    return parts;
}

std::vector<BarElement> bars_of_part(const pugi::xml_node& score, const std::string& id) {
    std::vector<BarElement> bars;
    const auto named = [&](const char* name) {
        return [&id, name](pugi::xml_node n) {
            return std::strcmp(n.name(), name) == 0 && id == n.attribute("id").value();
        };
    };
    if (std::strcmp(score.name(), "score-partwise") == 0) {
        for (const pugi::xml_node measure : score.find_child(named("part")).children("measure"))
            bars.push_back({measure, measure});
        return bars;
    }
    for (const pugi::xml_node measure : score.children("measure"))
        if (const pugi::xml_node content = measure.find_child(named("part"))) bars.push_back({content, measure});
    return bars;
}

std::string part_words(const ListedPart& part) {
    return one_line(part.name.empty() ? part.id : part.name + " (" + part.id + ")");
}

std::string part_list(const std::vector<ListedPart>& parts) {
    std::vector<std::string> names;
    for (const ListedPart& part : parts) names.push_back(part_words(part));
    return listed(names);
}

pugi::xml_node root_of(const pugi::xml_document& document, const std::string& where) {
    const pugi::xml_node root = document.document_element();
    const std::string name = root.name();
    if (name != "score-partwise" && name != "score-timewise")
        throw analysis::InputError(where, "is no MusicXML score: it begins with <" + one_line(name) +
                                              ">, and a score with <score-partwise> or <score-timewise>");
    return root;
}

}  // namespace

void load_musicxml(pugi::xml_document& document, const std::string& text, const std::string& where) {
    const pugi::xml_parse_result result = document.load_buffer(text.data(), text.size(), keep_everything);
    if (!result)
        throw analysis::InputError(where + ", " + line_and_column(text, result.offset),
                                   "is no well-formed XML: " + std::string(result.description()));
    refuse_own_entities(document, where);
}

std::vector<BarElement> bars_of(const pugi::xml_document& document, const std::string& where, const Part& part,
                                std::vector<std::string>& remarks) {
    const pugi::xml_node root = root_of(document, where);
    const std::vector<ListedPart> parts = listed_parts(root);
    for (const ListedPart& listed_part : parts) {
        if (!part.name.empty() && part.name != listed_part.id && part.name != listed_part.name) continue;
        std::vector<BarElement> bars = bars_of_part(root, listed_part.id);
        if (!has_notes(bars)) continue;
        if (parts.size() > 1 && part.name.empty())
            remarks.push_back("Part " + part_words(listed_part) + " was taken; there are " + part_list(parts) + ".");
        return bars;
    }
    if (!part.name.empty())
        throw analysis::InputError(
            where, "has no part \"" + one_line(part.name) + "\" with notes; it has " + part_list(parts));
    throw analysis::InputError(where, "holds no notes with a pitch");
}

}  // namespace sim::score
