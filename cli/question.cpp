// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "cli/options_run.hpp"
#include "cli/setting_text.hpp"
#include "sim/preset_reader.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace cli {

namespace {
constexpr std::size_t most_numbers = 50;  // in a list
}

using sim::report::SettingValue;
using sim::report::Span;

double Question::number(const SettingOption& option, double usual, const Allowed& allowed) {
    const SettingValue& value = run.settings.try_emplace(option.key, usual).first->second;
    const auto* number = std::get_if<double>(&value);
    if (number == nullptr || !(*number >= allowed.low) || !(*number <= allowed.high)) {
        const std::string unit = *allowed.unit == '\0' ? "" : std::string(" ") + allowed.unit;
        throw analysis::InputError(option.option,
                                   "must be a number from " + sim::number_text(allowed.low) + " to " +
                                       sim::number_text(allowed.high) + unit +
                                       (number != nullptr ? ", is " + sim::number_text(*number) : std::string()));
    }
    return *number;
}

int Question::whole(const SettingOption& option, int usual, const Allowed& allowed) {
    const double value = number(option, usual, allowed);
    if (value != std::floor(value))
        throw analysis::InputError(option.option, "must be a whole number, is " + sim::number_text(value));
    return static_cast<int>(value);
}

std::vector<double> Question::numbers(const SettingOption& option, const std::vector<double>& usual,
                                      const Allowed& allowed) {
    const SettingValue& value = run.settings.try_emplace(option.key, list_text(usual)).first->second;
    const auto* text = std::get_if<std::string>(&value);
    const auto* one = std::get_if<double>(&value);
    std::vector<double> numbers;
    if (text != nullptr) numbers = numbers_from(*text, option.option);
    if (one != nullptr) numbers = {*one};
    for (const double number : numbers)
        if (!(number >= allowed.low) || !(number <= allowed.high))
            throw analysis::InputError(option.option, "must be numbers from " + sim::number_text(allowed.low) + " to " +
                                                          sim::number_text(allowed.high) + " " + allowed.unit +
                                                          ", one is " + sim::number_text(number));
    const bool rising = std::ranges::adjacent_find(numbers, std::ranges::greater_equal()) == numbers.end();
    if (numbers.size() < 2 || numbers.size() > most_numbers || !rising)
        throw analysis::InputError(option.option,
                                   "must be 2 to 50 rising numbers with commas between, such as 0.1,0.4");
    return numbers;
}

std::optional<Span> Question::span(const std::string& key) const {
    const auto found = run.settings.find(key);
    if (found == run.settings.end()) return std::nullopt;
    if (const auto* span = std::get_if<Span>(&found->second)) return *span;
    if (const auto* number = std::get_if<double>(&found->second)) return Span{*number, *number};
    return std::nullopt;
}

double Question::one_stop() {
    note_usual("stop_semitones", 0.0);
    const std::optional<Span> stop = span("stop_semitones");
    if (!stop || !std::holds_alternative<double>(run.settings.at("stop_semitones")))
        throw analysis::InputError("--stop", "must be one stop here (5, or D5); climb takes a range A:B");
    return stop->from;
}

std::vector<double> Question::some_stops() {
    const auto listed = run.settings.find("stop_semitones");
    const auto* text = listed != run.settings.end() ? std::get_if<std::string>(&listed->second) : nullptr;
    if (text == nullptr && listed != run.settings.end() && std::holds_alternative<Span>(listed->second))
        throw analysis::InputError("--stop", "must be one stop, or several with commas between (0,12,19), no range");
    if (text == nullptr) return {one_stop()};
    std::vector<double> stops = numbers_from(*text, "--stop");
    std::ranges::sort(stops);
    const auto doubled = std::ranges::unique(stops);
    stops.erase(doubled.begin(), doubled.end());
    for (const double stop : stops) sim::make_note(preset, string, stop, stop_end);  // complains off the board
    if (stops.size() > most_numbers)
        throw analysis::InputError("--stop", "lists more than 50 stops; climb takes a range A:B");
    listed->second = stops.size() == 1 ? SettingValue(stops.front()) : SettingValue(list_text(stops));
    return stops;
}

std::vector<double> Question::stops() {
    constexpr double rounding = 1e-9;
    note_usual("stop_semitones", Span{0.0, sim::last_stop(preset)});
    const std::optional<Span> asked = span("stop_semitones");
    if (!asked) throw analysis::InputError("--stop", "must be a stop or a range A:B of stops");
    for (const double end : {asked->from, asked->to})
        sim::make_note(preset, string, end, stop_end);  // complains off the board
    std::vector<double> stops;
    for (int i = 0; asked->from + i <= asked->to + rounding; ++i) stops.push_back(asked->from + i);
    return stops;
}

std::vector<double> Question::stops_or(const std::vector<double>& usual) {
    if (run.settings.contains("stop_semitones")) {
        if (!std::holds_alternative<Span>(run.settings.at("stop_semitones"))) return some_stops();
        return stops();
    }
    std::vector<double> stops;
    for (const double stop : usual)
        if (stop <= sim::last_stop(preset)) stops.push_back(stop);
    return stops;
}

std::optional<double> Question::one_contact() const {
    const std::optional<Span> asked = span(contact_option.key);
    if (!asked) return std::nullopt;
    if (asked->from != asked->to)
        throw analysis::InputError(contact_option.option, "must be one place here; window takes a range A:B");
    return analysis::metres_from_mm(asked->from);
}

}  // namespace cli
