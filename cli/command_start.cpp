// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_start.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/preset_reader.hpp"
#include "sim/report/start_report.hpp"

#include <CLI/CLI.hpp>

#include <cmath>

namespace cli {
namespace {

using sim::report::SettingValue;
using sim::report::Span;

constexpr double progress_before_map = 0.2;

constexpr SettingOption beginning_option{"--beginning", "beginning", SettingKind::word, "from-rest|crossing",
                                         "Bow at rest on the string, or coming from another; default: from-rest"};
constexpr SettingOption start_forces_option{"--forces", "forces", SettingKind::number, "N", "Bow forces tried"};
constexpr SettingOption paces_option{"--paces", "paces", SettingKind::number, "N",
                                     "Accelerations tried (crossing: times of the force's rise)"};
constexpr SettingOption map_force_option{
    "--map-force-newtons", "map_force_newtons", SettingKind::span, "A:B",
    "Forces of the map; default: a quarter of the player's least to four times the greatest"};
constexpr SettingOption acceleration_option{"--acceleration-m-s2", "acceleration_m_s2", SettingKind::span, "A:B",
                                            "Accelerations of the map; default: a 32nd to four times speed / rise"};
constexpr SettingOption force_rise_option{
    "--force-rise-ms", "force_rise_ms", SettingKind::span, "A:B",
    "Crossing: times in which the force rises; default: a tenth to four times the player's rise"};
constexpr SettingOption strict_ms_option{"--strict-ms", "strict_ms", SettingKind::number, "MS",
                                         "Strict limit from first slip to settled note; the lenient is --speak-ms"};
constexpr SettingOption strict_periods_option{"--strict-periods", "strict_periods", SettingKind::number, "N",
                                              "The same in periods; the longer counts"};

sim::StartKind kind_of(Question& question) {
    question.note_usual(beginning_option.key, std::string(start_kind_name(sim::StartKind::from_rest)));
    const auto* name = std::get_if<std::string>(&question.run.settings.at(beginning_option.key));
    const auto kind = name != nullptr ? sim::start_kind_from_name(*name) : std::nullopt;
    if (!kind)
        throw analysis::InputError(beginning_option.option,
                                   "must be from-rest or crossing" +
                                       (name != nullptr ? ", is \"" + sim::one_line(*name) + "\"" : std::string()));
    return *kind;
}

/// The range given, else the usual one, in the option's unit; inside `allowed`, and from less to more.
Span range_of(Question& question, const SettingOption& option, const Span& usual, const Question::Allowed& allowed) {
    question.note_usual(option.key, Span{std::max(usual.from, allowed.low), std::min(usual.to, allowed.high)});
    const std::optional<Span> range = question.span(option.key);
    if (range && range->from < range->to && range->from >= allowed.low && range->to <= allowed.high) return *range;
    throw analysis::InputError(option.option, "must be a range A:B, A under B, within " +
                                                  sim::number_text(allowed.low) + " to " +
                                                  sim::number_text(allowed.high) + " " + allowed.unit);
}

void refuse(const Question& question, const SettingOption& option, const char* why) {
    if (question.run.settings.contains(option.key)) throw analysis::InputError(option.option, why);
}

sim::Range paces_of(Question& question, const sim::StartPlan& usual) {
    if (usual.start.kind == sim::StartKind::from_rest) {
        refuse(question, force_rise_option, "belongs to --beginning crossing; a start from rest has its force at once");
        const Span range =
            range_of(question, acceleration_option, {usual.paces.low, usual.paces.high}, {0.01, 1000.0, "m/s^2"});
        return {range.from, range.to};
    }
    refuse(question, acceleration_option, "belongs to --beginning from-rest; in a crossing the bow moves already");
    const Span range = range_of(
        question, force_rise_option,
        {analysis::ms_from_seconds(usual.paces.low), analysis::ms_from_seconds(usual.paces.high)}, {1.0, 5000.0, "ms"});
    return {analysis::seconds_from_ms(range.from), analysis::seconds_from_ms(range.to)};
}

sim::Acceptance strict_of(Question& question) {
    const sim::Acceptance usual = sim::usual_strict;
    return {.time = analysis::seconds_from_ms(
                question.number(strict_ms_option, analysis::ms_from_seconds(usual.time), {0.0, 10000.0, "ms"})),
            .periods = question.number(strict_periods_option, usual.periods, {0.0, 1000.0, ""})};
}

void check_limits(const sim::StartCase& start, double period) {
    if (accepted_time(start.strict, period) <= accepted_time(start.lenient, period)) return;
    throw analysis::InputError("--strict-ms",
                               "the strict limit (or --strict-periods) is longer than the lenient one, "
                               "--speak-ms and --speak-periods; give a shorter one");
}

/// All but the contact point.
sim::StartPlan plan_of(Question& question, const sim::Note& note) {
    sim::StartPlan plan = sim::usual_start_plan(kind_of(question), question.preset.player, 0.0);
    plan.force_count = question.whole(start_forces_option, plan.force_count, {2, 200, ""});
    plan.pace_count = question.whole(paces_option, plan.pace_count, {2, 200, ""});
    const Span forces = range_of(question, map_force_option, {plan.forces.low, plan.forces.high}, {0.001, 50.0, "N"});
    plan.forces = {forces.from, forces.to};
    plan.paces = paces_of(question, plan);
    plan.start.strict = strict_of(question);
    check_limits(plan.start, 1.0 / fundamental(note.string));
    return plan;
}

}  // namespace

StartCommand::StartCommand(CLI::App& program) {
    CLI::App& parser = add_parser(program, "start", "Which force and pace begin a note cleanly",
                                  "bowband start division_bass_viol --contact-mm 60 --forces 5 --paces 5");
    options_ = std::make_unique<RunOptions>(
        parser, "start",
        std::initializer_list<SettingOption>{contact_option, beginning_option, start_forces_option, paces_option,
                                             map_force_option, acceleration_option, force_rise_option, strict_ms_option,
                                             strict_periods_option});
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.chart = true});
}

void StartCommand::run() {
    Question question = options_->ask();
    require_force_range(question);
    const sim::Note note = note_asked(question);
    const sim::Player player = question.preset.player;
    const std::optional<double> place = place_asked(question, note);
    sim::StartPlan plan = plan_of(question, note);
    output_->check();
    sim::StartAnswer answer;
    {
        Progress progress(output_->quiet());
        const sim::Workers workers = progress.workers(question.workers);
        const double before = place ? 0.0 : progress_before_map;
        plan.start.contact_point =
            place ? *place : best_place(note, player, best_place_grid, sim::part_of(workers, {0.0, before}));
        answer = sim::find_start(note, plan, middle_force(player), sim::part_of(workers, {before, 1.0}));
    }
    const sim::report::Asked asked = asked_of(question, note);
    output_->write({.json = [&] { return start_json(asked, answer); },
                    .csv = [&] { return start_csv(asked, answer); },
                    .table = [&] { return start_table(asked, answer); },
                    .words = [&] { return sim::report::start_in_words(answer); },
                    .waveform = {},
                    .chart = [&](const auto& file) { draw_start_chart(file, asked, answer); },
                    .sounds = {}});
}

}  // namespace cli
