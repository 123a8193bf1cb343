// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_climb.hpp"

#include "analysis/audio_file.hpp"
#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/report/climb_report.hpp"
#include "sim/sound/takes.hpp"

#include <CLI/CLI.hpp>

namespace cli {
namespace {

constexpr double progress_before_sound = 0.95;

/// Everything that a climb with its sounds takes.
struct Plans {
    sim::ClimbPlan climb;
    sim::sound::ClimbTimes times;
};

Plans plans_of(Question& question) {
    Plans plans;
    plans.climb.stops = question.stops();
    plans.climb.end = question.stop_end;
    ask_grid(question, plans.climb.grid);
    plans.times.stop = question.number(seconds_option, plans.times.stop, {0.2, 5.0, "s"});
    return plans;
}

std::string words_of(const sim::Climb& climb, bool with_sound) {
    std::string words = climb_in_words(climb);
    if (with_sound) words += std::string("\n") + listening_caution;
    return words;
}

auto filler(const analysis::Signal& sound) {
    return [&sound](const analysis::OutputFile& file) {
        analysis::fill_audio(file, {.channels = {sound.samples}, .sample_rate = sound.sample_rate});
    };
}

}  // namespace

ClimbCommand::ClimbCommand(CLI::App& program) {
    CLI::App& parser = add_parser(program, "climb", "How the bow must move as the stops go up one string",
                                  "bowband climb division_bass_viol --stop 0:12 --contact-points 8 --forces 3");
    options_ = std::make_unique<RunOptions>(
        parser, "climb", std::initializer_list<SettingOption>{seconds_option, contact_points_option, forces_option});
    output_ = std::make_unique<OutputOptions>(
        parser, OutputOptions::Kinds{.chart = true, .wav_folder = true, .tone_chart = true});
}

void ClimbCommand::run() {
    Question question = options_->ask();
    require_force_range(question);
    const Plans plans = plans_of(question);
    output_->check();
    const sim::report::AskedClimb asked{
        .run = question.run, .bridge = question.preset.bridge, .reference_pitch = question.preset.reference_pitch};
    sim::Climb climb;
    sim::sound::ClimbTakes takes;
    {
        Progress progress(output_->quiet());
        const sim::Workers workers = progress.workers(question.workers);
        const double done = output_->wants_wav() ? progress_before_sound : 1.0;
        climb = sim::find_climb(question.preset, question.string, question.preset.player, plans.climb,
                                sim::part_of(workers, {0.0, done}));
        if (output_->wants_wav())
            takes = sim::sound::climb_takes(climb, plans.times, sim::part_of(workers, {done, 1.0}));
    }
    output_->write(
        {.json = [&] { return climb_json(asked, climb); },
         .csv = [&] { return climb_csv(asked, climb); },
         .table = [&] { return climb_table(asked, climb); },
         .words = [&] { return words_of(climb, output_->wants_wav()); },
         .waveform = {},
         .chart = [&](const auto& file) { draw_climb_chart(file, asked, climb); },
         .tone_chart = [&](const auto& file) { draw_climb_tone_chart(file, asked, climb); },
         .tone_csv = {},
         .sounds = {{"bow_left_behind.wav", filler(takes.left_behind)}, {"bow_follows.wav", filler(takes.follows)}}});
}

}  // namespace cli
