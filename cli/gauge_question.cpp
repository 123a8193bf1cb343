// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/gauge_question.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "cli/note_question.hpp"
#include "cli/setting_text.hpp"
#include "sim/material.hpp"
#include "sim/preset_reader.hpp"

#include <algorithm>
#include <cmath>

namespace cli {
namespace {

using sim::report::SettingValue;
using sim::report::Span;

constexpr SettingOption materials_option{"--materials", "materials", SettingKind::word, "NAME,…",
                                         "Materials to try; default: the string's own"};
constexpr SettingOption diameters_option{
    "--diameters-mm", "diameters_mm", SettingKind::stop, "A:B|LIST",
    "Diameters: five from A to B, or those listed; of an overspun string, that of plain core material as heavy"};
constexpr SettingOption masses_option{"--mass-g-m", "mass_g_m", SettingKind::stop, "A:B|LIST", "The same by mass"};
constexpr SettingOption tensions_option{
    "--tension-newtons", "tension_newtons", SettingKind::stop, "A:B|LIST",
    "The same by pull, from which the diameter follows; with --whole-set one pull for all strings"};
constexpr SettingOption aim_option{"--aim", "aim", SettingKind::word, "NAME",
                                   "Rank by widest_band (default), most_forgiving, least_force or nearest_pull"};
constexpr SettingOption aim_stop_option{"--aim-stop", "aim_stop", SettingKind::number, "N",
                                        "Stop at which they are ranked; default: 12, else the last"};
constexpr SettingOption raise_option{"--raise-semitones", "raise_semitones", SettingKind::number, "N",
                                     "Tune all strings so much higher than the reference pitch says"};
constexpr SettingOption whole_set_option{"--whole-set", "whole_set", SettingKind::flag, "",
                                         "All strings of the instrument (the default without --string)"};
constexpr SettingOption replace_option{"--replace", "replace", SettingKind::word, "NAME=MATERIAL MM,…",
                                       "Strings put in place of the instrument's, such as \"1=gut 0.66,3=nylon 1.2\""};

constexpr std::size_t most_candidates = 40;
constexpr int span_steps = 5;

/// One number, several, or five even in ratio from A to B; none where not asked for.
std::vector<double> values_asked(const Question& question, const SettingOption& option,
                                 const Question::Allowed& allowed) {
    const auto found = question.run.settings.find(option.key);
    if (found == question.run.settings.end()) return {};
    std::vector<double> values;
    if (const auto* one = std::get_if<double>(&found->second)) values = {*one};
    if (const auto* text = std::get_if<std::string>(&found->second)) values = numbers_from(*text, option.option);
    const auto* span = std::get_if<Span>(&found->second);
    if (span != nullptr) values = {span->from, span->to};
    for (const double value : values)
        if (!(value >= allowed.low) || !(value <= allowed.high))
            throw analysis::InputError(option.option, "must be from " + sim::number_text(allowed.low) + " to " +
                                                          sim::number_text(allowed.high) + " " + allowed.unit +
                                                          ", is " + sim::number_text(value));
    return span != nullptr ? sim::even_in_ratio({span->from, span->to}, span_steps) : values;
}

std::vector<std::string> split(const std::string& text, char at) {
    std::vector<std::string> parts;
    for (std::size_t from = 0, end = 0; end != std::string::npos; from = end + 1) {
        end = text.find(at, from);
        parts.push_back(text.substr(from, end - from));
    }
    return parts;
}

const std::string* word(const Question& question, const SettingOption& option) {
    const auto found = question.run.settings.find(option.key);
    if (found == question.run.settings.end()) return nullptr;
    const auto* text = std::get_if<std::string>(&found->second);
    if (text == nullptr) throw analysis::InputError(option.option, "must be words, is a number");
    return text;
}

std::vector<std::string> materials_asked(const Question& question) {
    const std::string* text = word(question, materials_option);
    if (text == nullptr) return {};
    std::vector<std::string> names = split(*text, ',');
    for (const std::string& name : names) sim::material(name, materials_option.option);
    return names;
}

sim::GaugeAsk gauges_of(const Question& question) {
    sim::GaugeAsk ask{.materials = materials_asked(question),
                      .diameters = values_asked(question, diameters_option, {0.05, 6.0, "mm"}),
                      .masses = values_asked(question, masses_option, {0.01, 200.0, "g/m"}),
                      .tensions = values_asked(question, tensions_option, {1.0, 1000.0, "N"})};
    for (double& diameter : ask.diameters) diameter = analysis::metres_from_mm(diameter);
    for (double& mass : ask.masses) mass = analysis::kg_m_from_g_m(mass);
    return ask;
}

/// "1=gut 0.66" put into the preset.
sim::Preset with_replacement(const sim::Preset& preset, const std::string& text) {
    const std::size_t equals = text.find('=');
    const std::size_t space = text.rfind(' ');
    if (equals == std::string::npos || space == std::string::npos || space < equals)
        throw analysis::InputError(replace_option.option, "must be NAME=MATERIAL MM, such as \"1=gut 0.66\", is \"" +
                                                              sim::one_line(text) + "\"");
    const sim::PresetString& string = sim::preset_string(preset, text.substr(0, equals));
    const std::string name = text.substr(equals + 1, space - equals - 1);
    sim::material(name, replace_option.option);
    const double diameter = analysis::metres_from_mm(number_from(text.substr(space + 1), replace_option.option));
    const double mass = diameter > 0.0 ? sim::plain_mass_of(name, diameter) : 0.0;
    return sim::with_string(preset, sim::with_gauge(preset, string, name, mass));
}

void raise(Question& question, sim::Preset& preset) {
    constexpr double lowest = 300.0;  // Hz, as in presets
    constexpr double highest = 550.0;
    const double semitones = question.number(raise_option, 0.0, {-12.0, 12.0, "semitones"});
    preset.reference_pitch *= analysis::ratio_from_semitones(semitones);
    if (preset.reference_pitch < lowest || preset.reference_pitch > highest)
        throw analysis::InputError(raise_option.option, "makes A4 " +
                                                            sim::number_text(std::round(preset.reference_pitch)) +
                                                            " Hz; it must stay from 300 to 550 Hz");
}

sim::GaugePlan plan_of(Question& question) {
    sim::GaugePlan plan;
    plan.stops = question.stops_or({0.0, 12.0, 19.0});
    plan.end = question.stop_end;
    ask_grid(question, plan.grid);
    question.note_usual(aim_option.key, std::string(sim::gauge_aim_name(plan.aim)));
    const std::string* name = word(question, aim_option);
    const auto aim = sim::gauge_aim_from_name(*name);
    if (!aim)
        throw analysis::InputError(
            aim_option.option,
            "must be widest_band, most_forgiving, least_force or nearest_pull, is \"" + sim::one_line(*name) + "\"");
    plan.aim = *aim;
    if (question.run.settings.contains(aim_stop_option.key)) {
        plan.aim_stop = question.number(aim_stop_option, 0.0, {0.0, 60.0, "semitones"});
        if (std::ranges::find(plan.stops, *plan.aim_stop) == plan.stops.end())
            throw analysis::InputError(aim_stop_option.option,
                                       "must be one of the stops looked at: " + list_text(plan.stops));
    }
    return plan;
}

bool wants_whole_set(Question& question) {
    const bool usual = !question.string_named;
    question.note_usual(whole_set_option.key, usual ? "yes" : "no");
    return *word(question, whole_set_option) == "yes";
}

/// One pull for all strings.
void even_out(GaugeQuestion& asked, const sim::GaugeAsk& ask) {
    if (!ask.diameters.empty() || !ask.masses.empty() || !ask.materials.empty())
        throw analysis::InputError("--whole-set",
                                   "takes --tension-newtons and --replace; --materials, --diameters-mm "
                                   "and --mass-g-m are for one --string");
    if (ask.tensions.empty()) return;
    if (ask.tensions.size() > 1)
        throw analysis::InputError(tensions_option.option, "must be one pull for a whole set, or give a --string");
    for (const sim::PresetString& string : sim::Preset(asked.now).strings) {
        const double pitch = sim::pitch_frequency(string.pitch, asked.now.reference_pitch);
        const double mass = sim::mass_for_pull({ask.tensions.front(), pitch, string.length});
        asked.now = sim::with_string(asked.now, sim::with_gauge(asked.now, string, string.gauge.material, mass));
    }
}

}  // namespace

const std::initializer_list<SettingOption> gauge_options{
    materials_option, diameters_option, masses_option,  tensions_option,       aim_option,   aim_stop_option,
    raise_option,     whole_set_option, replace_option, contact_points_option, forces_option};

GaugeQuestion gauges_asked(Question& question) {
    GaugeQuestion asked{.set_up = question.run.preset,
                        .now = question.preset,
                        .whole_set = wants_whole_set(question),
                        .candidates = {},
                        .plan = plan_of(question)};
    raise(question, asked.now);
    if (const std::string* replaced = word(question, replace_option))
        for (const std::string& part : split(*replaced, ',')) asked.now = with_replacement(asked.now, part);
    const sim::GaugeAsk ask = gauges_of(question);
    if (asked.whole_set) {
        even_out(asked, ask);
        return asked;
    }
    asked.candidates = sim::gauge_candidates(asked.now, sim::preset_string(asked.now, question.string.name), ask);
    if (asked.candidates.size() > most_candidates)
        throw analysis::InputError("candidates",
                                   "would be " + std::to_string(asked.candidates.size()) + "; ask for at most 40");
    return asked;
}

}  // namespace cli
