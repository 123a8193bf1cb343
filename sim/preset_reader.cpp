// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset_reader.hpp"

#include "analysis/errors.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <set>
#include <utility>

namespace sim {
namespace {

std::string described(const nlohmann::json& value) {
    if (value.is_string()) {
        return "the text \"" + one_line(value.get_ref<const std::string&>()) + "\"";
    }
    if (value.is_number()) {
        return number_text(value.get<double>());
    }
    if (value.is_boolean()) {
        return value.get<bool>() ? "true" : "false";
    }
    return value.is_object() ? "an object" : value.is_array() ? "a list" : "null";
}

std::string accepted(const NumberLimits& limits) {
    const std::string unit = limits.unit.empty() ? "" : " " + std::string(limits.unit);
    return "a number from " + number_text(limits.low) + " to " + number_text(limits.high) + unit;
}

/// Edits (a letter put in, left out or changed) that turn one name into the other.
std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j < row.size(); ++j) {
        row[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = std::exchange(row[0], i);
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t changed = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = row[j];
            row[j] = std::min({changed, row[j] + 1, row[j - 1] + 1});
        }
    }
    return row.back();
}

/// Follows the parser through the document, to find a key that stands twice (the parser would keep the last).
class TwinKeys {
public:
    explicit TwinKeys(std::string where) : where_(std::move(where)) {}

    void see(nlohmann::json::parse_event_t event, const nlohmann::json& parsed) {
        using Event = nlohmann::json::parse_event_t;
        if (event == Event::object_start || event == Event::array_start || event == Event::value) {
            if (!open_.empty() && open_.back().list) {
                open_.back().part = std::to_string(open_.back().count++);
            }
        }
        if (event == Event::object_start || event == Event::array_start) {
            open_.push_back({event == Event::array_start, 0, "", {}});
        } else if (event == Event::object_end || event == Event::array_end) {
            open_.pop_back();
        } else if (event == Event::key) {
            take_key(parsed.get<std::string>());
        }
    }

private:
    struct Open {
        bool list;
        int count;
        std::string part;
        std::set<std::string> seen;
    };

    void take_key(const std::string& key) {
        open_.back().part = pointer_part(key);
        if (open_.back().seen.insert(key).second) {
            return;
        }
        std::string pointer;
        for (const Open& open : open_) {
            pointer += "/" + open.part;
        }
        throw analysis::InputError(where_ + " " + one_line(pointer),
                                   "key \"" + one_line(key) + "\" stands twice; give it once");
    }

    std::string where_;
    std::vector<Open> open_;
};

}  // namespace

PresetNode::PresetNode(const nlohmann::json& value, std::string file, std::string pointer)
    : value_(&value), file_(std::move(file)), pointer_(std::move(pointer)) {}

void PresetNode::fail(const std::string& what) const {
    throw analysis::InputError(pointer_.empty() ? file_ : file_ + " " + one_line(pointer_), what);
}

void PresetNode::fail_at(std::string_view key, const std::string& what) const {
    throw analysis::InputError(file_ + " " + one_line(pointer_ + "/" + pointer_part(key)), what);
}

void PresetNode::only_keys(std::initializer_list<std::string_view> known) const {
    if (!value_->is_object()) {
        fail("must be an object { … }, is " + described(*value_));
    }
    const std::vector<std::string> names(known.begin(), known.end());
    for (const auto& [key, ignored] : value_->items()) {
        if (std::find(names.begin(), names.end(), key) != names.end()) {
            continue;
        }
        const std::string nearest = nearest_name(key, names);
        const std::string hint = nearest.empty() ? "" : "did you mean \"" + nearest + "\"? ";
        fail_at(key, "unknown key \"" + one_line(key) + "\"; " + hint + "Known keys here: " + listed(names));
    }
}

bool PresetNode::has(std::string_view key) const { return value_->is_object() && value_->contains(std::string(key)); }

PresetNode PresetNode::child(std::string_view key) const {
    if (!has(key)) {
        fail_at(key, "missing key \"" + std::string(key) + "\"; it must be given here");
    }
    return {value_->at(std::string(key)), file_, pointer_ + "/" + pointer_part(key)};
}

std::vector<PresetNode> PresetNode::items() const {
    if (!value_->is_array()) {
        fail("must be a list [ … ], is " + described(*value_));
    }
    std::vector<PresetNode> nodes;
    for (std::size_t i = 0; i < value_->size(); ++i) {
        nodes.emplace_back((*value_)[i], file_, pointer_ + "/" + std::to_string(i));
    }
    return nodes;
}

std::vector<std::string> PresetNode::keys() const {
    if (!value_->is_object()) {
        fail("must be an object { … }, is " + described(*value_));
    }
    std::vector<std::string> keys;
    for (const auto& [key, ignored] : value_->items()) {
        keys.push_back(key);
    }
    return keys;
}

double PresetNode::number(const NumberLimits& limits) const {
    if (!value_->is_number()) {
        const bool quoted = value_->is_string();
        fail("must be " + accepted(limits) + (quoted ? ", without quotes" : "") + ", is " + described(*value_));
    }
    const double number = value_->get<double>();
    if (!(number >= limits.low && number <= limits.high)) {
        fail("must be " + accepted(limits) + ", is " + number_text(number));
    }
    return number;
}

double PresetNode::number(std::string_view key, const NumberLimits& limits) const {
    if (!has(key)) {
        fail_at(key, "missing key \"" + std::string(key) + "\"; give " + accepted(limits));
    }
    return child(key).number(limits);
}

std::optional<double> PresetNode::optional_number(std::string_view key, const NumberLimits& limits) const {
    return has(key) ? std::optional<double>(child(key).number(limits)) : std::nullopt;
}

int PresetNode::integer(int low, int high) const {
    const std::string what = "must be a whole number from " + std::to_string(low) + " to " + std::to_string(high);
    const double number = value_->is_number() ? value_->get<double>() : std::nan("");
    if (!(number >= low && number <= high) || number != std::floor(number)) {
        fail(what + (value_->is_string() ? ", without quotes" : "") + ", is " + described(*value_));
    }
    return static_cast<int>(number);
}

bool PresetNode::boolean() const {
    if (!value_->is_boolean()) {
        fail("must be true or false, without quotes, is " + described(*value_));
    }
    return value_->get<bool>();
}

std::string PresetNode::text_or_empty() const {
    if (!value_->is_string()) {
        fail("must be text in quotes, is " + described(*value_));
    }
    std::string text = value_->get<std::string>();
    if (one_line(text) != text) {
        fail("must be text in one line, without control characters, is " + described(*value_));
    }
    return text;
}

std::string PresetNode::text() const {
    std::string text = text_or_empty();
    if (text.find_first_not_of(' ') == std::string::npos) {
        fail("must be text of at least one letter, is empty");
    }
    return text;
}

std::string PresetNode::text(std::string_view key) const { return child(key).text(); }

nlohmann::json parsed_json(const std::string& text, const std::string& where) {
    TwinKeys twins(where);
    const auto watch = [&twins](int, nlohmann::json::parse_event_t event, nlohmann::json& parsed) {
        twins.see(event, parsed);
        return true;
    };
    try {
        return nlohmann::json::parse(text, watch);
    } catch (const nlohmann::json::exception& error) {
        std::string what = error.what();
        // the parser's own class and number say nothing to people: "[json.exception.parse_error.101] "
        if (const auto end = what.find("] "); what.starts_with("[json.") && end != std::string::npos) {
            what = what.substr(end + 2);
        }
        if (what.find("ill-formed UTF-8") != std::string::npos) {
            what = what.substr(0, what.find("; last read"));  // which ends in the very byte that can't be shown
        }
        throw analysis::InputError(where, "must be JSON; " + one_line(what));
    }
}

std::string pointer_part(std::string_view key) {
    std::string part;
    for (const char c : key) {
        part += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
    }
    return part;
}

std::string one_line(std::string_view text) {
    std::string line(text);
    std::replace_if(
        line.begin(), line.end(), [](unsigned char c) { return c < 0x20 || c == 0x7f; }, ' ');
    return line;
}

std::string number_text(double number) {
    char digits[64];
    const bool plain = number == 0.0 || (std::abs(number) >= 1e-5 && std::abs(number) < 1e9);
    const auto format = plain ? std::chars_format::fixed : std::chars_format::general;
    return {digits, std::to_chars(digits, digits + sizeof digits, number, format).ptr};
}

std::string listed(const std::vector<std::string>& names) {
    std::string list;
    for (const std::string& name : names) {
        list += (list.empty() ? "" : ", ") + name;
    }
    return list;
}

std::string nearest_name(std::string_view name, const std::vector<std::string>& names) {
    std::string nearest;
    // more than half of the letters wrong is no slip of the pen
    std::size_t best = std::max<std::size_t>(name.size() / 2, 1) + 1;
    for (const std::string& candidate : names) {
        if (const std::size_t distance = edit_distance(name, candidate); distance < best) {
            best = distance;
            nearest = candidate;
        }
    }
    return nearest;
}

}  // namespace sim
