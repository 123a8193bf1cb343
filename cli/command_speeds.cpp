// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_speeds.hpp"

#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/report/speeds_report.hpp"

#include <CLI/CLI.hpp>

namespace cli {
namespace {

constexpr SettingOption speeds_option{"--speeds-m-s", "speeds_m_s", SettingKind::list, "V,V,...",
                                      "Bow speeds tried, two or more; default: a quarter to 2.8 times the player's"};

sim::SpeedPlan plan_of(Question& question) {
    sim::SpeedPlan plan;
    plan.stops = question.some_stops();
    plan.end = question.stop_end;
    plan.speeds = question.numbers(speeds_option, usual_speeds(question.preset.player), {0.005, 5.0, "m/s"});
    ask_grid(question, plan.grid);
    return plan;
}

}  // namespace

SpeedsCommand::SpeedsCommand(CLI::App& program) {
    CLI::App& parser = add_parser(
        program, "speeds",
        "Which force and speed a note wants, and what soft, loud and slow strokes do to its band; --stop may list "
        "several notes (0,12,19)",
        "bowband speeds division_bass_viol --stop 12 --speeds-m-s 0.1,0.4 --contact-points 6 --forces 2");
    options_ = std::make_unique<RunOptions>(
        parser, "speeds", std::initializer_list<SettingOption>{speeds_option, contact_points_option, forces_option});
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.chart = true});
}

void SpeedsCommand::run() {
    Question question = options_->ask();
    require_force_range(question);
    const sim::SpeedPlan plan = plan_of(question);
    output_->check();
    const sim::report::AskedSpeeds asked{.run = question.run, .reference_pitch = question.preset.reference_pitch};
    sim::SpeedStudy study;
    {
        Progress progress(output_->quiet());
        study = sim::find_speeds(question.preset, question.string, question.preset.player, plan,
                                 progress.workers(question.workers));
    }
    output_->write({.json = [&] { return speeds_json(asked, study); },
                    .csv = [&] { return speeds_csv(asked, study); },
                    .table = [&] { return speeds_table(asked, study); },
                    .words = [&] { return speeds_in_words(study); },
                    .waveform = {},
                    .chart = [&](const auto& file) { draw_speeds_chart(file, asked, study); },
                    .tone_chart = {},
                    .tone_csv = {},
                    .sounds = {}});
}

}  // namespace cli
