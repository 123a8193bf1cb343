// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_sensitivity.hpp"

#include "analysis/errors.hpp"
#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/report/sensitivity_report.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>

namespace cli {
namespace {

constexpr double highest_usual_stop = 19.0;

constexpr SettingOption only_option{"--only", "only", SettingKind::word, "NAME",
                                    "One constant, or a group: rosin, string, stop, body, player; default: all"};
constexpr SettingOption factor_option{"--factor", "factor", SettingKind::number, "F",
                                      "By which each constant is multiplied and divided"};

/// From the lowest to the highest stop asked for, those at which constants are usually looked at.
std::vector<double> stops_of(Question& question) {
    const double last = sim::last_stop(question.preset);
    question.note_usual("stop_semitones", sim::report::Span{0.0, std::min(highest_usual_stop, last)});
    const auto asked = question.span("stop_semitones");
    if (!asked) throw analysis::InputError("--stop", "must be a stop or a range A:B of stops");
    for (const double end : {asked->from, asked->to})
        sim::make_note(question.preset, question.string, end, question.stop_end);  // complains off the board
    return sim::usual_sensitivity_stops(asked->from, asked->to);
}

sim::SensitivityPlan plan_of(Question& question) {
    sim::SensitivityPlan plan;
    plan.stops = stops_of(question);
    plan.end = question.stop_end;
    plan.grid.contact_points = question.whole(contact_points_option, plan.grid.contact_points, {2, 200, ""});
    plan.grid.player_forces = question.whole(forces_option, plan.grid.player_forces, {2, 100, ""});
    plan.factor = question.number(factor_option, plan.factor, {1.01, 4.0, ""});
    question.note_usual("only", "all");
    const auto* name = std::get_if<std::string>(&question.run.settings.at("only"));
    if (name == nullptr) throw analysis::InputError("--only", "must be the name of a constant or a group");
    plan.constants = sim::constants_named(*name, "--only");
    return plan;
}

}  // namespace

SensitivityCommand::SensitivityCommand(CLI::App& program) {
    CLI::App& parser = add_parser(program, "sensitivity",
                                  "What the best place and the rule rest on: every remembered constant, changed either "
                                  "way (minutes; --stop A:B keeps to the usual stops from A to B)",
                                  "bowband sensitivity division_bass_viol --only shear_modulus --stop 12 "
                                  "--contact-points 8 --forces 3");
    options_ = std::make_unique<RunOptions>(
        parser, "sensitivity",
        std::initializer_list<SettingOption>{only_option, factor_option, contact_points_option, forces_option});
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.chart = true});
}

void SensitivityCommand::run() {
    Question question = options_->ask();
    require_force_range(question);
    const sim::SensitivityPlan plan = plan_of(question);
    output_->check();
    const sim::report::AskedSensitivity asked{.run = question.run, .reference_pitch = question.preset.reference_pitch};
    sim::Sensitivity found;
    {
        Progress progress(output_->quiet());
        found = sim::find_sensitivity(question.preset, question.string, plan, progress.workers(question.workers));
    }
    output_->write({.json = [&] { return sensitivity_json(asked, found); },
                    .csv = [&] { return sensitivity_csv(asked, found); },
                    .table = [&] { return sensitivity_table(asked, found); },
                    .words = [&] { return sensitivity_in_words(found); },
                    .waveform = {},
                    .chart = [&](const auto& file) { draw_sensitivity_chart(file, asked, found); },
                    .sounds = {}});
}

}  // namespace cli
