// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset_parts.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

namespace sim {
namespace {

constexpr std::string_view source_forms =
    "a source key such as [Woodhouse2004], or text that begins with \"from memory\", \"common practice\", "
    "\"measured\" or \"invented\"";

/// "[Name1999]" or "[Name1999b]" at the start of `text`.
bool begins_with_key(std::string_view text) {
    const std::size_t end = text.find(']');
    if (text.empty() || text.front() != '[' || end == std::string_view::npos) {
        return false;
    }
    const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
    std::string_view key = text.substr(1, end - 1);
    if (key.size() > 5 && !is_digit(key.back())) {
        key.remove_suffix(1);
    }
    return key.size() > 4 && std::all_of(key.end() - 4, key.end(), is_digit) &&
           std::none_of(key.begin(), key.end() - 4, [](char c) { return c == ' ' || c == '['; });
}

bool is_source(std::string_view text) {
    constexpr std::array<std::string_view, 4> open_words = {"from memory", "common practice", "measured", "invented"};
    const auto begins = [text](std::string_view words) {
        return text.starts_with(words) &&
               (text.size() == words.size() || std::isalnum(static_cast<unsigned char>(text[words.size()])) == 0);
    };
    return begins_with_key(text) || std::any_of(open_words.begin(), open_words.end(), begins);
}

/// Whether the pointer leads to a value of the document; the sources themselves don't count.
bool leads_somewhere(const nlohmann::json& document, const std::string& pointer) {
    try {
        return !pointer.starts_with("/sources") && document.contains(nlohmann::json::json_pointer(pointer));
    } catch (const nlohmann::json::exception&) {
        return false;
    }
}

void check_sources(const PresetNode& root, const Preset& preset) {
    const PresetNode sources = root.child("sources");
    for (const auto& [pointer, source] : preset.sources) {
        if (!leads_somewhere(root.json(), pointer)) {
            sources.fail_at(pointer, "\"" + one_line(pointer) +
                                         "\" leads to nothing in this file; give a JSON pointer such as "
                                         "/strings/0/gauge or /bridge");
        }
        if (!is_source(source)) {
            sources.fail_at(pointer, "must be " + std::string(source_forms) + ", is \"" + source + "\"");
        }
    }
}

bool covered(const std::map<std::string, std::string>& sources, std::string pointer) {
    while (!sources.contains(pointer)) {
        if (pointer.empty()) {
            return false;
        }
        pointer.erase(pointer.rfind('/'));
    }
    return true;
}

/// Counts, which need no source.
bool is_count(const std::string& pointer) {
    return pointer == "/format" || pointer == "/frets" || pointer.starts_with("/chromatic_frets");
}

/// Every number under `node` must be covered by a source.
void check_covered(const PresetNode& node, const std::map<std::string, std::string>& sources) {
    if (node.json().is_object()) {
        for (const std::string& key : node.keys()) {
            check_covered(node.child(key), sources);
        }
    } else if (node.json().is_array()) {
        for (const PresetNode& item : node.items()) {
            check_covered(item, sources);
        }
    } else if (node.json().is_number() && !is_count(node.pointer()) && !covered(sources, node.pointer())) {
        node.fail("has no source; give \"" + node.pointer() + "\", or a pointer above it, in \"sources\" with " +
                  std::string(source_forms));
    }
}

void check_names(const PresetNode& root, const Preset& preset) {
    const std::vector<PresetNode> nodes = root.child("strings").items();
    for (std::size_t i = 0; i < preset.strings.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            if (preset.strings[i].name == preset.strings[j].name) {
                nodes[i].fail_at("name", "\"" + preset.strings[i].name + "\" is also the name of /strings/" +
                                             std::to_string(j) + "; give every string its own");
            }
        }
    }
}

/// A tension that no string or instrument bears comes from a slip in pitch, length or gauge.
void check_tensions(const PresetNode& root, const Preset& preset) {
    constexpr double least = 0.5;      // N
    constexpr double greatest = 2000;  // N
    const std::vector<PresetNode> nodes = root.child("strings").items();
    for (std::size_t i = 0; i < preset.strings.size(); ++i) {
        const String open = open_string(preset, preset.strings[i]);
        if (!(open.tension >= least && open.tension <= greatest)) {
            nodes[i].fail_at("gauge", "pitch, length and gauge make a tension of " +
                                          number_text(std::round(open.tension * 1000.0) / 1000.0) +
                                          " N; it must come out from 0.5 to 2000 N");
        }
    }
}

}  // namespace

void check_preset(const PresetNode& root, const Preset& preset) {
    check_names(root, preset);
    check_tensions(root, preset);
    check_sources(root, preset);
    for (const std::string& key : root.keys()) {
        if (key != "sources") {
            check_covered(root.child(key), preset.sources);
        }
    }
}

}  // namespace sim
