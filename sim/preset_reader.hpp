// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sim {

/// What a number in a preset may be, in the unit of its key.  Both ends are allowed values.
struct NumberLimits {
    double low;
    double high;
    std::string_view unit;  ///< as told to people: "mm", "Hz"; empty for plain numbers
};

/// One value of a preset file together with its place, so that every complaint can name it.
///
/// Borrows the JSON document, which must live longer.  All members throw analysis::InputError with
/// "file /json/pointer" as its place when the value is not what was asked for.
class PresetNode {
public:
    PresetNode(const nlohmann::json& value, std::string file, std::string pointer);

    [[noreturn]] void fail(const std::string& what) const;
    /// Complains about the value under `key`, there or missing.
    [[noreturn]] void fail_at(std::string_view key, const std::string& what) const;

    /// The value must be an object with no other keys than these.
    void only_keys(std::initializer_list<std::string_view> known) const;
    bool has(std::string_view key) const;
    PresetNode child(std::string_view key) const;
    std::vector<PresetNode> items() const;
    std::vector<std::string> keys() const;

    double number(const NumberLimits& limits) const;
    double number(std::string_view key, const NumberLimits& limits) const;
    std::optional<double> optional_number(std::string_view key, const NumberLimits& limits) const;
    int integer(int low, int high) const;
    bool boolean() const;
    /// Text in one line, not empty.
    std::string text() const;
    /// Text in one line, "" allowed.
    std::string text_or_empty() const;
    std::string text(std::string_view key) const;

    const nlohmann::json& json() const { return *value_; }
    const std::string& pointer() const { return pointer_; }

private:
    const nlohmann::json* value_;
    std::string file_;
    std::string pointer_;
};

/// The JSON document in `text`; InputError with line and column for malformed JSON, and for a key that stands twice.
nlohmann::json parsed_json(const std::string& text, const std::string& where);

/// A key as a part of a JSON pointer: "~" and "/" escaped.
std::string pointer_part(std::string_view key);
/// Control characters replaced, so that a message stays on one line.
std::string one_line(std::string_view text);
/// Shortest text that reads back as the same number.
std::string number_text(double number);
/// "a, b, c"
std::string listed(const std::vector<std::string>& names);
/// The name nearest to `name`, or empty if none is near.
std::string nearest_name(std::string_view name, const std::vector<std::string>& names);

}  // namespace sim
