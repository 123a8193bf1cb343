// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_laws.hpp"

#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/report/law_report.hpp"

#include <CLI/CLI.hpp>

namespace cli {

LawsCommand::LawsCommand(CLI::App& program) {
    CLI::App& parser =
        add_parser(program, "laws", "Forces that hold and that speak, under each way in which rosin may grip",
                   "bowband laws treble_viol --stop 12 --contact-mm 15");
    options_ = std::make_unique<RunOptions>(parser, "laws", std::initializer_list<SettingOption>{contact_option});
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.chart = true});
}

void LawsCommand::run() {
    Question question = options_->ask();
    require_force_range(question);
    const sim::LawPlan plan{.stops = question.stops_or({0.0, 7.0, 12.0, 19.0}),
                            .end = question.stop_end,
                            .contact_point = question.one_contact().value_or(0.0)};
    if (plan.contact_point > 0.0)
        for (const double stop : plan.stops)
            sim::check_contact(sim::make_note(question.preset, question.string, stop, plan.end), plan.contact_point);
    output_->check();
    const sim::report::AskedLaws asked{
        .run = question.run, .player = question.preset.player, .reference_pitch = question.preset.reference_pitch};
    std::vector<sim::LawWindow> windows;
    {
        Progress progress(output_->quiet());
        windows = sim::find_law_windows(question.preset, question.string, plan, progress.workers(question.workers));
    }
    output_->write({.json = [&] { return laws_json(asked, windows); },
                    .csv = [&] { return laws_csv(asked, windows); },
                    .table = [&] { return laws_table(asked, windows); },
                    .words = [&] { return sim::report::laws_in_words(windows); },
                    .waveform = {},
                    .chart = [&](const auto& file) { draw_laws_chart(file, asked, windows); },
                    .sounds = {}});
}

}  // namespace cli
