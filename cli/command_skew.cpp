// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_skew.hpp"

#include "analysis/units.hpp"
#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/report/skew_report.hpp"

#include <CLI/CLI.hpp>

namespace cli {
namespace {

constexpr SettingOption stroke_option{"--stroke-mm", "stroke_mm", SettingKind::number, "MM",
                                      "Length of the stroke, hair drawn over the string"};
constexpr SettingOption skew_option{"--skew-degrees", "skew_degrees", SettingKind::number, "DEGREES",
                                    "One angle from the parallel; default: 0, 2, 5, 10, 15, 20"};

sim::SkewPlan plan_of(Question& question) {
    sim::SkewPlan plan;
    ask_grid(question, plan.grid);
    plan.stroke_length = analysis::metres_from_mm(
        question.number(stroke_option, analysis::mm_from_metres(plan.stroke_length), {1.0, 1500.0, "mm"}));
    if (question.span(skew_option.key))
        plan.angles = {0.0, analysis::radians_from_degrees(question.number(skew_option, 0.0, {0.0, 40.0, "degrees"}))};
    return plan;
}

}  // namespace

SkewCommand::SkewCommand(CLI::App& program) {
    CLI::App& parser =
        add_parser(program, "skew", "What a bow costs that is not parallel to the bridge",
                   "bowband skew division_bass_viol --stop 12 --skew-degrees 10 --contact-points 8 --forces 3");
    options_ = std::make_unique<RunOptions>(
        parser, "skew",
        std::initializer_list<SettingOption>{stroke_option, skew_option, contact_points_option, forces_option});
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.chart = true});
}

void SkewCommand::run() {
    Question question = options_->ask();
    require_force_range(question);
    const std::vector<double> stops = question.stops_or({0.0, 12.0, 19.0});
    const sim::SkewPlan plan = plan_of(question);
    output_->check();
    const sim::report::AskedSkew asked{.run = question.run,
                                       .player = question.preset.player,
                                       .reference_pitch = question.preset.reference_pitch,
                                       .stroke_length = plan.stroke_length};
    std::vector<sim::SkewResult> results;
    {
        Progress progress(output_->quiet());
        const sim::Workers workers = progress.workers(question.workers);
        const double share = 1.0 / static_cast<double>(stops.size());
        for (std::size_t i = 0; i < stops.size(); ++i)
            results.push_back(sim::find_skew(
                sim::make_note(question.preset, question.string, stops[i], question.stop_end), question.preset.player,
                plan, sim::part_of(workers, {share * static_cast<double>(i), share * static_cast<double>(i + 1)})));
    }
    output_->write({.json = [&] { return skew_json(asked, results); },
                    .csv = [&] { return skew_csv(asked, results); },
                    .table = [&] { return skew_table(asked, results); },
                    .words = [&] { return skew_in_words(asked, results); },
                    .waveform = {},
                    .chart = [&](const auto& file) { draw_skew_chart(file, asked, results); },
                    .sounds = {}});
}

}  // namespace cli
