// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_gauges.hpp"

#include "cli/chart_calls.hpp"
#include "cli/gauge_question.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/report/gauges_report.hpp"

#include <CLI/CLI.hpp>

namespace cli {

GaugesCommand::GaugesCommand(CLI::App& program) {
    CLI::App& parser = add_parser(
        program, "gauges", "Strings side by side: bands, tone, pull, and what may break; or a whole set",
        "bowband gauges division_bass_viol --string 1 --materials gut,nylon --stop 12 --contact-points 8 --forces 3");
    options_ = std::make_unique<RunOptions>(parser, "gauges", gauge_options);
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.chart = true});
}

void GaugesCommand::run() {
    Question question = options_->ask();
    require_force_range(question);
    const GaugeQuestion strings = gauges_asked(question);
    output_->check();
    sim::GaugeStudy study;
    {
        Progress progress(output_->quiet());
        const sim::Workers workers = progress.workers(question.workers);
        study = strings.whole_set
                    ? sim::find_set(strings.set_up, strings.now, strings.plan, workers)
                    : sim::find_gauges(strings.set_up, strings.now, strings.candidates, strings.plan, workers);
    }
    const sim::report::AskedGauges asked{.run = question.run, .preset = strings.now};
    output_->write({.json = [&] { return gauges_json(asked, study); },
                    .csv = [&] { return gauges_csv(asked, study); },
                    .table = [&] { return gauges_table(asked, study); },
                    .words = [&] { return sim::report::gauges_in_words(study); },
                    .waveform = {},
                    .chart = [&](const auto& file) { draw_gauges_chart(file, asked, study); },
                    .sounds = {}});
}

}  // namespace cli
