// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_ends.hpp"

#include "analysis/errors.hpp"
#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/report/ends_report.hpp"

#include <CLI/CLI.hpp>

namespace cli {
namespace {

sim::EndsPlan plan_of(Question& question, const sim::Note& note) {
    sim::EndsPlan plan;
    ask_grid(question, plan.grid);
    plan.held_points = question.whole(held_points_option, plan.held_points, {1, 40, ""});
    plan.end = question.stop_end;
    plan.contact_point = place_asked(question, note);
    return plan;
}

}  // namespace

EndsCommand::EndsCommand(CLI::App& program) {
    CLI::App& parser =
        add_parser(program, "ends", "Fret against bare finger (and nut, for the open string) at one place",
                   "bowband ends division_bass_viol --stop 12 --contact-mm 35 --held-points 1");
    options_ = std::make_unique<RunOptions>(
        parser, "ends",
        std::initializer_list<SettingOption>{contact_option, contact_points_option, forces_option, held_points_option});
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.chart = true});
}

void EndsCommand::run() {
    Question question = options_->ask();
    require_force_range(question);
    const sim::Note note = note_asked(question);
    const sim::EndsPlan plan = plan_of(question, note);
    output_->check();
    const sim::report::Asked asked = asked_of(question, note);
    std::optional<sim::Ends> ends;
    {
        Progress progress(output_->quiet());
        ends = sim::find_ends(question.preset, question.string, note.stop, plan, progress.workers(question.workers));
    }
    if (!ends)
        throw analysis::OutputError("best contact point",
                                    "no stroke of the range speaks anywhere on this note; give --contact-mm");
    output_->write({.json = [&] { return ends_json(asked, *ends); },
                    .csv = [&] { return ends_csv(asked, *ends); },
                    .table = [&] { return ends_table(asked, *ends); },
                    .words = [&] { return sim::report::ends_in_words(*ends); },
                    .waveform = {},
                    .chart = [&](const auto& file) { draw_ends_chart(file, asked, *ends); },
                    .sounds = {}});
}

}  // namespace cli
