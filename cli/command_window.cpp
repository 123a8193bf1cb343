// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_window.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

#include <CLI/CLI.hpp>

namespace cli {
namespace {

using sim::report::Span;

/// Both ends must be places for a bow, and some contact point of the grid must lie between.
void check_range(const sim::Note& note, const sim::WindowPlan& plan) {
    sim::check_contact(note, *plan.near_limit);
    sim::check_contact(note, *plan.far_limit);
    for (const double place : sim::even_in_ratio({note.floor, sim::farthest_contact(note)}, plan.grid.contact_points))
        if (place >= *plan.near_limit && place <= *plan.far_limit) return;
    throw analysis::InputError("--contact-mm", "no contact point of the grid lies from " +
                                                   sim::short_number(analysis::mm_from_metres(*plan.near_limit)) +
                                                   " to " +
                                                   sim::short_number(analysis::mm_from_metres(*plan.far_limit)) +
                                                   " mm; give a wider range, more --contact-points, or a single place");
}

void refuse_outputs_of_a_window(const OutputOptions& output) {
    const char* option = output.wants_chart()        ? "--chart"
                         : output.wants_tone_chart() ? "--tone-chart"
                         : output.wants_tone_csv()   ? "--tone-csv"
                                                     : nullptr;
    if (option != nullptr)
        throw analysis::InputError(option, "shows a whole window; give --contact-mm A:B, or leave it out");
}

sim::WindowPlan plan_of(Question& question, const sim::Note& note) {
    sim::WindowPlan plan;
    ask_grid(question, plan.grid);
    plan.grid.more_forces = plan.grid.player_forces;
    plan.held_points = question.whole(held_points_option, plan.held_points, {0, 400, ""});
    const auto range = question.span(contact_option.key);
    if (range && range->from < range->to) {
        plan.near_limit = analysis::metres_from_mm(range->from);
        plan.far_limit = analysis::metres_from_mm(range->to);
        check_range(note, plan);
    }
    question.note_usual(contact_option.key, "all");
    return plan;
}

}  // namespace

WindowCommand::WindowCommand(CLI::App& program) {
    CLI::App& parser =
        add_parser(program, "window", "Where one note can be bowed; with one --contact-mm: what that place is worth",
                   "bowband window division_bass_viol --stop 12 --contact-points 8 --forces 3 --held-points 2");
    options_ = std::make_unique<RunOptions>(
        parser, "window",
        std::initializer_list<SettingOption>{contact_option, contact_points_option, forces_option, held_points_option});
    output_ = std::make_unique<OutputOptions>(
        parser, OutputOptions::Kinds{.chart = true, .tone_chart = true, .tone_csv = true});
}

void WindowCommand::run() {
    Question question = options_->ask();
    require_force_range(question);
    const sim::Note note = note_asked(question);
    const sim::WindowPlan plan = plan_of(question, note);
    const auto place = question.span(contact_option.key);
    const bool one = place && place->from == place->to;
    const double contact_point = one ? analysis::metres_from_mm(place->from) : 0.0;
    if (one) sim::check_contact(note, contact_point);
    if (one) refuse_outputs_of_a_window(*output_);
    output_->check();
    const sim::report::Asked asked = asked_of(question, note);
    if (one)
        one_place(asked, plan, contact_point, question.workers);
    else
        whole_window(asked, plan, question.workers);
}

void WindowCommand::whole_window(const sim::report::Asked& asked, const sim::WindowPlan& plan,
                                 const sim::Workers& workers) const {
    sim::Window window;
    {
        Progress progress(output_->quiet());
        window = sim::find_window(asked.note, asked.player, plan, progress.workers(workers));
    }
    output_->write({.json = [&] { return window_json(asked, window); },
                    .csv = [&] { return window_csv(asked, window); },
                    .table = [&] { return window_table(asked, window); },
                    .words = [&] { return window_in_words(asked, window.band); },
                    .waveform = {},
                    .chart = [&](const auto& file) { draw_window_chart(file, asked, window); },
                    .tone_chart = [&](const auto& file) { draw_tone_map_chart(file, asked, window); },
                    .tone_csv = [&] { return window_map_csv(asked, window); },
                    .sounds = {}});
}

void WindowCommand::one_place(const sim::report::Asked& asked, const sim::WindowPlan& plan, double contact_point,
                              const sim::Workers& workers) const {
    sim::HereResult here;
    {
        Progress progress(output_->quiet());
        here = sim::bow_here(asked.note, asked.player, contact_point, plan, progress.workers(workers));
    }
    output_->write({.json = [&] { return here_json(asked, here); },
                    .csv = [&] { return here_csv(asked, here); },
                    .table = [&] { return here_table(asked, here); },
                    .words = [&] { return sim::report::here_in_words(here); },
                    .waveform = {},
                    .chart = {},
                    .tone_chart = {},
                    .tone_csv = {},
                    .sounds = {}});
}

}  // namespace cli
