// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/options_run.hpp"

#include "analysis/errors.hpp"
#include "cli/command.hpp"
#include "cli/setting_text.hpp"
#include "sim/preset_reader.hpp"

#include <CLI/CLI.hpp>

#include <array>
#include <cmath>
#include <thread>

namespace cli {
namespace {

using sim::report::SettingValue;
using sim::report::Span;

constexpr const char* note_group = "The note";
constexpr const char* tune_group = "The tune and its instrument";
constexpr const char* player_group = "The player (instead of the preset's)";
constexpr double most_threads = 256.0;

constexpr SettingOption string_option{"--string", "string", SettingKind::word, "NAME",
                                      "String by name or pitch; default: the first"};
constexpr SettingOption stop_option{
    "--stop", "stop_semitones", SettingKind::stop, "N|A:B|PITCH",
    "Semitones above the open string (fractions too), from A to B, or a pitch such as D5"};
constexpr SettingOption stop_end_option{"--stop-end", "stop_end", SettingKind::word, "nut|fret|finger",
                                        "What ends the string; default: fret while there are frets, then finger"};
constexpr SettingOption law_option{"--law", "law", SettingKind::word, "LAW",
                                   "Friction: thermal, double_exponential, hyperbola, coulomb"};
constexpr SettingOption temperament_option{"--temperament", "temperament", SettingKind::word, "NAME",
                                           "equal, quarter_comma, fifth_comma, sixth_comma, rule_of_18"};
constexpr SettingOption reference_option{"--reference-pitch-hz", "reference_pitch_hz", SettingKind::number, "HZ",
                                         "Pitch of A4"};

constexpr SettingOption kernel_option{
    "--kernel", "kernel", SettingKind::word, "lanes|reference",
    "What plays maps and windows: 16 strokes at a time in single precision (default), or one by one in double"};

constexpr std::array<SettingOption, 10> player_options{{
    {"--force-newtons", "force_newtons", SettingKind::span, "F|A:B", "Bow force, or the range from A to B"},
    {"--speed-m-s", "speed_m_s", SettingKind::number, "V", "Bow speed"},
    {"--rise-ms", "rise_ms", SettingKind::number, "MS", "Time in which the speed rises to its value"},
    {"--wander-mm", "wander_mm", SettingKind::number, "MM", "How far the contact point strays either way"},
    {"--pitch-tolerance-cents", "pitch_tolerance_cents", SettingKind::number, "CENTS", "Pitch still taken as the note"},
    {"--speak-ms", "speak_ms", SettingKind::number, "MS", "Time within which a stroke must speak"},
    {"--speak-periods", "speak_periods", SettingKind::number, "N", "The same in periods; the longer counts"},
    {"--tone-level-db", "tone_level_db", SettingKind::number, "DB", "Level under the note's best that still is tone"},
    {"--tone-brightness-ratio", "tone_brightness_ratio", SettingKind::number, "RATIO",
     "Least brightness, of the note's best"},
    {"--band-share", "band_share", SettingKind::number, "SHARE", "Share of good strokes from which a place counts"},
}};

/// Keys that change the preset itself.
bool is_preset_setting(const std::string& key) {
    if (key == "law" || key == "temperament" || key == "reference_pitch_hz") return true;
    return std::ranges::any_of(player_options, [&](const SettingOption& option) { return key == option.key; });
}

std::string shipped_names() {
    std::vector<std::string> names;
    for (const std::filesystem::path& file : sim::shipped_presets()) names.push_back(file.stem().string());
    return names.empty() ? "none found" : sim::listed(names);
}

std::optional<sim::StopEnd> stop_end_of(const sim::report::Settings& settings) {
    const auto found = settings.find("stop_end");
    if (found == settings.end() || found->second == SettingValue("usual")) return std::nullopt;
    const auto* name = std::get_if<std::string>(&found->second);
    const auto end = name != nullptr ? sim::stop_end_from_name(*name) : std::nullopt;
    if (!end)
        throw analysis::InputError("--stop-end",
                                   "must be nut, fret or finger" +
                                       (name != nullptr ? ", is \"" + sim::one_line(*name) + "\"" : std::string()));
    return end;
}

sim::Kernel kernel_of(const sim::report::Settings& settings) {
    const auto found = settings.find("kernel");
    if (found == settings.end()) return sim::Kernel::lanes;
    const auto* name = std::get_if<std::string>(&found->second);
    const auto kernel = name != nullptr ? sim::kernel_from_name(*name) : std::nullopt;
    if (!kernel)
        throw analysis::InputError(
            "--kernel",
            "must be lanes or reference" + (name != nullptr ? ", is \"" + sim::one_line(*name) + "\"" : std::string()));
    return *kernel;
}

std::string option_named(const std::vector<SettingOption>& options, const std::string& key) {
    const auto found = std::ranges::find_if(options, [&](const SettingOption& option) { return key == option.key; });
    return found == options.end() ? key : found->option;
}

/// The string asked for, with the stops and what ends them.
void put_string(Question& question, bool or_every) {
    sim::report::Settings& settings = question.run.settings;
    const auto named = settings.find("string");
    question.every_string = or_every && (named == settings.end() || named->second == SettingValue("all"));
    question.string_named =
        !question.every_string && named != settings.end() && std::holds_alternative<std::string>(named->second);
    question.string = sim::preset_string(question.preset, question.string_named ? std::get<std::string>(named->second)
                                                                                : question.preset.strings.front().name);
    settings["string"] = question.every_string ? "all" : question.string.name;
    if (const auto stop = settings.find("stop_semitones"); stop != settings.end()) {
        if (const auto* words = std::get_if<std::string>(&stop->second))
            stop->second = stops_from_words(*words, question.preset, question.string);
    }
    question.stop_end = stop_end_of(settings);
    settings.try_emplace("stop_end", "usual");
}

}  // namespace

RunOptions::RunOptions(CLI::App& parser, std::string command, std::initializer_list<SettingOption> more, Asks asks)
    : command_(std::move(command)), asks_(asks) {
    parser.add_option("PRESET", preset_, "A preset file, or the short or full name of a shipped one")->type_name("");
    if (asks != Asks::whole_instrument)
        for (const SettingOption& option : {string_option, stop_option, stop_end_option})
            add(parser, option, note_group);
    const char* group = asks == Asks::whole_instrument ? tune_group : note_group;
    for (const SettingOption& option : {law_option, reference_option, temperament_option}) add(parser, option, group);
    for (const SettingOption& option : more) add(parser, option, group);
    for (const SettingOption& option : player_options) add(parser, option, player_group);
    add(parser, kernel_option, "Run");
    parser.add_option("--repeat", repeat_, "Do again what FILE.json says under \"run\"; no PRESET, no other settings")
        ->type_name("FILE")
        ->group("Run");
    parser.add_option("--threads", threads_, "Threads; default: all cores")->type_name("N")->group("Run");
}

void RunOptions::add(CLI::App& parser, const SettingOption& option, const char* group) {
    options_.push_back(option);
    const std::string key = option.key;
    if (option.kind == SettingKind::flag) {
        parser
            .add_flag_callback(
                option.option, [this, key] { given_[key] = "yes"; }, option.help)
            ->group(group);
        return;
    }
    parser
        .add_option_function<std::string>(
            option.option, [this, key](const std::string& text) { given_[key] = text; }, option.help)
        ->type_name(option.placeholder)
        ->group(group);
}

void RunOptions::refuse_beside_repeat() const {
    if (preset_.empty() && given_.empty()) return;
    const std::string what =
        given_.empty() ? "PRESET \"" + preset_ + "\"" : option_named(options_, given_.begin()->first);
    throw analysis::InputError("--repeat", "takes everything from its file; leave out " + sim::one_line(what));
}

sim::report::RunRecord RunOptions::record() const {
    if (!repeat_.empty()) {
        refuse_beside_repeat();
        sim::report::RunRecord record = sim::report::read_run(repeat_, command_);
        for (const auto& [key, value] : record.settings) {
            if (option_named(options_, key) == key)
                throw analysis::InputError(repeat_ + " /run/settings",
                                           "unknown setting \"" + sim::one_line(key) + "\"");
        }
        return record;
    }
    if (preset_.empty())
        throw analysis::InputError("PRESET", "missing; give a preset file, or one of: " + shipped_names());
    sim::report::RunRecord record{
        .version = {}, .command = command_, .preset = sim::find_preset(preset_), .settings = {}};
    for (const SettingOption& option : options_) {
        if (const auto found = given_.find(option.key); found != given_.end())
            record.settings[option.key] = setting_from(found->second, option);
    }
    return record;
}

int RunOptions::thread_count() const {
    if (threads_.empty()) return static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
    const double count = number_from(threads_, "--threads");
    if (count != std::floor(count) || count < 1.0 || count > most_threads)
        throw analysis::InputError("--threads", "must be a whole number from 1 to 256, is " + sim::number_text(count));
    return static_cast<int>(count);
}

Question RunOptions::ask() const {
    Question question{.run = record(), .preset = {}, .string = {}, .stop_end = {}, .workers = {}};
    question.workers.threads = thread_count();
    question.run.version = program_version();
    question.preset = question.run.preset;
    sim::report::Settings& settings = question.run.settings;
    for (const auto& [key, value] : settings) {
        // a single force is a stroke's, not a range
        if (!is_preset_setting(key) || (key == "force_newtons" && !std::holds_alternative<Span>(value))) continue;
        question.preset = sim::report::with_setting(question.preset, key, value, option_named(options_, key));
    }
    settings.merge(sim::report::settings_of(question.preset));

    if (asks_ != Asks::whole_instrument) put_string(question, asks_ == Asks::one_or_every_string);
    question.workers.kernel = kernel_of(settings);
    settings["kernel"] = std::string(sim::kernel_name(question.workers.kernel));
    return question;
}

}  // namespace cli
