// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_lesson.hpp"

#include "analysis/errors.hpp"
#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/report/lesson_page.hpp"
#include "sim/score/shipped_tunes.hpp"
#include "sim/text.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cmath>

namespace cli {
namespace {

constexpr std::size_t most_heard = 12;  // a page must stay easy to copy and to send

constexpr SettingOption heard_option{"--hear-stops", "hear_stops_semitones", SettingKind::list, "N,N,…",
                                     "Stops to listen to, rising; default: lowest, fifth, octave, twelfth, highest"};

constexpr SettingOption tune_option{"--tune", "tune", SettingKind::word, "TUNE",
                                    "A tune to put in: a shipped one (bass_study), a file, or words, as passage takes"};
constexpr double tune_until = 0.4;  // of the work with a tune, for the progress bar

/// Nothing where none was asked for.
std::optional<sim::score::ReadTune> tune_asked(const Question& question) {
    const auto found = question.run.settings.find(tune_option.key);
    if (found == question.run.settings.end()) return std::nullopt;
    const auto* place = std::get_if<std::string>(&found->second);
    if (place == nullptr || place->empty()) throw analysis::InputError(tune_option.option, "must name a tune");
    return sim::score::read_tune(sim::score::tune_place(*place));
}

std::string heard_words(const std::vector<double>& stops) {
    return "the stops go from " + sim::short_number(stops.front()) + " to " + sim::short_number(stops.back()) +
           ", a semitone apart";
}

/// The stops to listen to, each exactly one of the climb's.
std::vector<double> heard_stops(Question& question, const std::vector<double>& stops) {
    constexpr double rounding = 1e-6;
    const bool given = question.run.settings.contains(heard_option.key);
    const std::vector<double> usual = sim::usual_heard(stops);
    if (!given && usual.size() == 1) return usual;
    std::vector<double> heard = question.numbers(heard_option, usual, {stops.front(), stops.back(), "semitones"});
    if (heard.size() > most_heard) throw analysis::InputError(heard_option.option, "lists more than 12 stops");
    for (double& stop : heard) {
        const auto same = std::ranges::find_if(stops, [&](double of) { return std::abs(of - stop) < rounding; });
        if (same == stops.end())
            throw analysis::InputError(heard_option.option, "stop " + sim::short_number(stop) +
                                                                " is none of this lesson's: " + heard_words(stops));
        stop = *same;
    }
    return heard;
}

sim::LessonPlan plan_of(Question& question) {
    sim::LessonPlan plan;
    plan.climb.stops = question.stops();
    plan.climb.end = question.stop_end;
    ask_grid(question, plan.climb.grid);
    plan.seconds = question.number(seconds_option, plan.seconds, {0.3, 2.0, "s"});
    plan.heard = heard_stops(question, plan.climb.stops);
    return plan;
}

/// As finely as the lesson looks.
sim::passage::BowPlan bow_plan(const sim::LessonPlan& lesson) {
    sim::passage::BowPlan plan;
    plan.grid.contact_points = std::min(plan.grid.contact_points, lesson.climb.grid.contact_points);
    plan.grid.player_forces = std::min(plan.grid.player_forces, lesson.climb.grid.player_forces);
    return plan;
}

}  // namespace

LessonCommand::LessonCommand(CLI::App& program) {
    CLI::App& parser = add_parser(
        program, "lesson", "A page to hand out: where the bow belongs as the hand climbs, to see and to hear",
        "bowband lesson division_bass_viol --stop 0:12 --contact-points 8 --forces 3 --page lesson.html");
    options_ =
        std::make_unique<RunOptions>(parser, "lesson",
                                     std::initializer_list<SettingOption>{heard_option, tune_option, seconds_option,
                                                                          contact_points_option, forces_option});
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.page = true});
}

void LessonCommand::run() {
    Question question = options_->ask();
    require_force_range(question);
    const sim::LessonPlan plan = plan_of(question);
    const std::optional<sim::score::ReadTune> read = tune_asked(question);
    if (!output_->wants_page())
        throw analysis::InputError("--page", "missing; give the page's name, such as lesson.html");
    output_->check();
    const sim::report::AskedLesson asked{.run = question.run, .preset = question.preset, .string = question.string};
    sim::Lesson lesson;
    std::optional<sim::LessonTune> tune;
    {
        Progress progress(output_->quiet());
        const sim::Workers workers = progress.workers(question.workers);
        if (read)  // first: it may be one that the instrument can't play
            tune = make_lesson_tune(*read, question.preset, bow_plan(plan), part_of(workers, {0.0, tune_until}));
        lesson =
            sim::make_lesson(question.preset, question.string, plan, part_of(workers, {read ? tune_until : 0.0, 1.0}));
    }
    const sim::LessonTune* in_page = tune ? &*tune : nullptr;
    output_->write({.json = [&] { return lesson_json(asked, lesson, in_page); },
                    .csv = [&] { return lesson_csv(asked, lesson); },
                    .table = [&] { return lesson_table(asked, lesson); },
                    .words = [&] { return lesson_in_words(asked, lesson, in_page); },
                    .waveform = {},
                    .chart = {},
                    .tone_chart = {},
                    .tone_csv = {},
                    .page = [&] { return lesson_html(asked, lesson, lesson_charts(asked, lesson, in_page), in_page); },
                    .sounds = {}});
}

}  // namespace cli
