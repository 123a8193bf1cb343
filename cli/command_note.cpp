// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_note.hpp"

#include "analysis/audio_file.hpp"
#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/force_window.hpp"
#include "sim/report/note_report.hpp"
#include "sim/security.hpp"
#include "sim/sound/render.hpp"
#include "sim/sound/takes.hpp"
#include "sim/text.hpp"

#include <CLI/CLI.hpp>

#include <array>
#include <cmath>

namespace cli {
namespace {

using sim::report::Span;

constexpr double heard_seconds = 2.0;  // unless said otherwise, where a sound is wanted

/// One force if one was given, else the middle of the range.
double force_of(const Question& question, const sim::Player& player) {
    const auto* single = std::get_if<double>(&question.run.settings.at("force_newtons"));
    if (single == nullptr) return middle_force(player);
    constexpr double least = 0.001;
    constexpr double most = 50.0;
    if (!(*single >= least && *single <= most)) {
        throw analysis::InputError("--force-newtons",
                                   "must be a force from 0.001 to 50 N, is " + sim::short_number(*single));
    }
    return *single;
}

sim::MapGrid grid_of(Question& question) {
    sim::MapGrid grid = best_place_grid;
    ask_grid(question, grid);
    return grid;
}

/// The stroke; with its whole record where a sound or the waveforms are wanted, or its beating is listened for.
sim::Played played(const sim::Note& note, const sim::Stroke& stroke, bool whole) {
    if (whole) return sim::play_recorded(note, stroke);
    return {.result = sim::play(note, stroke), .record = {}};
}

auto sound_filler(const sim::Played& played, const sim::Bridge& bridge) {
    return [&](const analysis::OutputFile& file) {
        std::array<analysis::Signal, 1> take{sim::sound::take_of(played, bridge)};
        sim::sound::share_gain(take);
        analysis::fill_audio(file, {.channels = {take[0].samples}, .sample_rate = take[0].sample_rate});
    };
}

}  // namespace

NoteCommand::NoteCommand(CLI::App& program) {
    CLI::App& parser = add_parser(program, "note", "One stroke, measured and heard",
                                  "bowband note division_bass_viol --stop 5 --contact-mm 40 --force-newtons 0.2");
    options_ = std::make_unique<RunOptions>(
        parser, "note",
        std::initializer_list<SettingOption>{contact_option, seconds_option, contact_points_option, forces_option});
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.wav_file = true, .waveform = true});
}

void NoteCommand::run() {
    Question question = options_->ask();
    sim::Note note = note_asked(question);
    const sim::Player player = question.preset.player;
    sim::Stroke stroke{.force = force_of(question, player), .speed = player.speed, .rise = player.rise};
    note.force_high = std::max(note.force_high, stroke.force);
    const std::optional<double> place = place_asked(question, note);
    const sim::MapGrid grid = grid_of(question);
    const double usual = output_->wants_wav() ? heard_seconds : sim::started_duration(note, player);
    stroke.duration = question.number(seconds_option, usual, {0.1, 10.0, "s"});
    output_->check();
    {
        Progress progress(output_->quiet());
        stroke.contact_point = place ? *place : best_place(note, player, grid, progress.workers(question.workers));
    }
    const bool whole = output_->wants_wav() || output_->wants_waveform() || stroke.duration >= sim::wolf_least_time;
    const sim::Played answer_played = played(note, stroke, whole);
    const sim::report::Asked asked = asked_of(question, note);
    const sim::report::NoteAnswer answer{.stroke = answer_played.result,
                                         .limits = sim::limits(note, {stroke.contact_point, stroke.speed}),
                                         .speaks = sim::speaks(answer_played.result, note, player),
                                         .beating = sim::beating_of(answer_played, note)};
    output_->write({.json = [&] { return note_json(asked, answer); },
                    .csv = [&] { return note_csv(asked, answer); },
                    .table = [&] { return note_table(asked, answer); },
                    .words = [&] { return std::string(output_->wants_wav() ? listening_caution : ""); },
                    .waveform = [&] { return sim::report::waveform_csv(answer_played); },
                    .chart = {},
                    .tone_chart = {},
                    .tone_csv = {},
                    .sounds = {{"", sound_filler(answer_played, note.bridge)}}});
}

}  // namespace cli
