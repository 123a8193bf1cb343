// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/setting_text.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "sim/preset_reader.hpp"

#include <charconv>
#include <cmath>

namespace cli {
namespace {

using sim::report::SettingValue;
using sim::report::Span;

std::optional<double> read_number(const std::string& text) {
    double value = 0.0;
    const char* end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, value);
    if (read.ec != std::errc() || read.ptr != end || !std::isfinite(value)) return std::nullopt;
    return value;
}

[[noreturn]] void refuse(const std::string& where, const std::string& must, const std::string& text) {
    throw analysis::InputError(where, "must be " + must + ", is \"" + sim::one_line(text) + "\"");
}

/// Either the number, or the two on both sides of a colon, read by `read`.
template <class Read>
SettingValue one_or_two(const std::string& text, const std::string& where, const Read& read) {
    const std::size_t colon = text.find(':');
    if (colon == std::string::npos) return read(text);
    const Span span{read(text.substr(0, colon)), read(text.substr(colon + 1))};
    if (span.from > span.to) refuse(where, "A:B with the smaller first", text);
    return span;
}

SettingValue span_from(const std::string& text, const std::string& where) {
    return one_or_two(text, where, [&](const std::string& part) {
        const std::optional<double> value = read_number(part);
        if (!value) refuse(where, "a number such as 0.2, or two such as 0.1:0.4", text);
        return *value;
    });
}

/// Numbers where every part is one, else the words.
SettingValue stop_from(const std::string& text, const std::string& where) {
    const std::size_t colon = text.find(':');
    const bool numbers =
        read_number(text.substr(0, colon)) && (colon == std::string::npos || read_number(text.substr(colon + 1)));
    return numbers ? span_from(text, where) : SettingValue(text);
}

std::vector<std::string> parts_of(const std::string& list) {
    std::vector<std::string> parts;
    for (std::size_t from = 0, comma = 0; comma != std::string::npos; from = comma + 1) {
        comma = list.find(',', from);
        parts.push_back(list.substr(from, comma - from));
    }
    return parts;
}

double semitones_from(const std::string& part, const sim::Preset& preset, const sim::PresetString& string) {
    constexpr double grid = 1e-6;  // pitches at the preset's reference lie on whole semitones but for rounding
    if (const std::optional<double> number = read_number(part)) return *number;
    double wanted = 0.0;
    try {
        wanted = sim::pitch_frequency(part, preset.reference_pitch);
    } catch (const analysis::InputError&) {
        refuse("--stop", "semitones above the open string (0, 5, 5.5), a pitch (D5, Bb4, F#5), or A:B", part);
    }
    const double open = sim::pitch_frequency(string.pitch, preset.reference_pitch);
    const double semitones = analysis::cents_between(wanted, open) / 100.0;
    if (semitones < -grid) {
        throw analysis::InputError("--stop " + part, "lies below the open string " + string.name + " (" + string.pitch +
                                                         "); give a pitch from " + string.pitch +
                                                         " up, or another --string");
    }
    return std::round(semitones / grid) * grid == std::round(semitones) ? std::round(semitones) : semitones;
}

}  // namespace

double number_from(const std::string& text, const std::string& where) {
    const std::optional<double> value = read_number(text);
    if (!value) refuse(where, "a number such as 3 or 0.2", text);
    return *value;
}

std::vector<double> numbers_from(const std::string& text, const std::string& where) {
    std::vector<double> numbers;
    for (const std::string& part : parts_of(text)) {
        const std::optional<double> value = read_number(part);
        if (!value) refuse(where, "numbers with commas between, such as 0.1,0.4", text);
        numbers.push_back(*value);
    }
    return numbers;
}

std::string list_text(const std::vector<double>& numbers) {
    std::string text;
    for (const double number : numbers) text += (text.empty() ? "" : ",") + sim::number_text(number);
    return text;
}

SettingValue setting_from(const std::string& text, const SettingOption& option) {
    switch (option.kind) {
        case SettingKind::number:
            return number_from(text, option.option);
        case SettingKind::span:
            return span_from(text, option.option);
        case SettingKind::stop:
            return stop_from(text, option.option);
        case SettingKind::list:
            return list_text(numbers_from(text, option.option));
        case SettingKind::word:
        case SettingKind::flag:
            break;
    }
    return text;
}

SettingValue stops_from_words(const std::string& words, const sim::Preset& preset, const sim::PresetString& string) {
    if (words.find(',') != std::string::npos) {
        std::vector<double> stops;
        for (const std::string& part : parts_of(words)) stops.push_back(semitones_from(part, preset, string));
        return list_text(stops);
    }
    return one_or_two(words, "--stop", [&](const std::string& part) { return semitones_from(part, preset, string); });
}

}  // namespace cli
