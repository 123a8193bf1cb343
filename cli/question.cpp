// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "cli/options_run.hpp"
#include "sim/preset_reader.hpp"

#include <cmath>

namespace cli {

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
        if (std::holds_alternative<double>(run.settings.at("stop_semitones"))) return {one_stop()};
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
        throw analysis::InputError(contact_option.option, "must be one contact point here, such as 35");
    return analysis::metres_from_mm(asked->from);
}

}  // namespace cli
