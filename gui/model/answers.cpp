// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/answers.hpp"

#include "gui/model/selection.hpp"
#include "sim/sound/render.hpp"

#include <array>

namespace gui {
namespace {

constexpr int coarse_points = 12;

}  // namespace

QuestionRun run_of(const NoteQuestion& question, const char* command, const sim::MapGrid& grid) {
    QuestionRun run{.preset = *question.preset, .record = {}};
    run.preset.player.speed = question.speed;
    run.record.version = BOWBAND_VERSION;
    run.record.command = command;
    run.record.preset = *question.preset;
    run.record.settings = sim::report::settings_of(run.preset);
    run.record.settings["string"] = question.preset->strings[static_cast<std::size_t>(question.string_index)].name;
    run.record.settings["stop_end"] = "usual";
    run.record.settings["contact_points"] = static_cast<double>(grid.contact_points);
    run.record.settings["forces"] = static_cast<double>(grid.player_forces);
    return run;
}

const sim::PresetString& string_of(const QuestionRun& run, const NoteQuestion& question) {
    return run.preset.strings[static_cast<std::size_t>(question.string_index)];
}

NoteQuestion note_question(const Selection& selection) {
    return {.preset = selection.preset(),
            .string_index = selection.string_index(),
            .stop = selection.stop(),
            .speed = selection.speed()};
}

ClimbAnswer climb_answer(const NoteQuestion& question, Fineness fineness, const sim::Workers& workers) {
    sim::ClimbPlan plan;
    if (fineness == Fineness::coarse) plan.grid.contact_points = coarse_points;
    QuestionRun run = run_of(question, "climb", plan.grid);
    const double last = sim::last_stop(run.preset);
    for (int stop = 0; stop <= last; ++stop) plan.stops.push_back(stop);
    run.record.settings["stop_semitones"] = sim::report::Span{0.0, last};
    run.record.settings["seconds"] = sim::sound::ClimbTimes{}.stop;
    ClimbAnswer answer{
        .asked = {.run = run.record, .bridge = run.preset.bridge, .reference_pitch = run.preset.reference_pitch},
        .climb = {},
        .fine = fineness == Fineness::fine};
    answer.climb = sim::find_climb(run.preset, string_of(run, question), run.preset.player, plan, workers);
    return answer;
}

WindowAnswer window_answer(const NoteQuestion& question, Fineness fineness, const sim::Workers& workers) {
    sim::WindowPlan plan;
    plan.grid.more_forces = plan.grid.player_forces;
    if (fineness == Fineness::coarse)
        plan = {.grid = {coarse_points, 8, 4}, .near_limit = {}, .far_limit = {}, .held_points = 0};
    QuestionRun run = run_of(question, "window", plan.grid);
    run.record.settings["stop_semitones"] = question.stop;
    run.record.settings["held_points"] = static_cast<double>(plan.held_points);
    run.record.settings["contact_mm"] = "all";
    const sim::Note note = sim::make_note(run.preset, string_of(run, question), question.stop);
    return {.asked = {.run = run.record,
                      .note = note,
                      .player = run.preset.player,
                      .reference_pitch = run.preset.reference_pitch},
            .window = sim::find_window(note, run.preset.player, plan, workers),
            .fine = fineness == Fineness::fine};
}

TakePair note_pair(const PairQuestion& question, const sim::Workers& workers) {
    const QuestionRun run = run_of(question.note, "note", {});
    const sim::Note note = sim::make_note(run.preset, string_of(run, question.note), question.note.stop);
    std::array<analysis::Signal, 2> takes;
    sim::for_each_job(2, workers, [&](int job) {
        const double place = job == 0 ? question.left_behind : question.follows;
        sim::Stroke stroke = sim::started_stroke(note, run.preset.player, {place, question.force});
        stroke.duration = question.seconds;
        takes[static_cast<std::size_t>(job)] = sim::sound::take_of(sim::play_recorded(note, stroke), note.bridge);
    });
    sim::sound::share_gain(takes);
    return {std::move(takes[0]), std::move(takes[1])};
}

}  // namespace gui
