// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/match_answer.hpp"

#include "analysis/errors.hpp"
#include "gui/model/watched_sound.hpp"

namespace gui {
namespace {

constexpr double passes = 3.0;  // match_recording plays a sound so often

sim::match::KnownPlace known_place(const QuestionRun& run, const MatchQuestion& question) {
    sim::match::KnownPlace known;
    if (question.where == LookedFor::any_string) return known;
    const sim::PresetString& string = string_of(run, question.note);
    known.string = string.name;
    if (question.where == LookedFor::this_string) return known;
    known.stop = question.note.stop;
    sim::make_note(run.preset, string, *known.stop);  // complains off the board
    return known;
}

sim::report::RunRecord record_of(const QuestionRun& run, const sim::match::MatchPlan& plan, sim::Kernel kernel) {
    sim::report::RunRecord record = run.record;
    if (!plan.known.string) record.settings["string"] = "all";
    if (plan.known.stop) record.settings["stop_semitones"] = *plan.known.stop;
    record.settings["region_share"] = plan.region_share;
    record.settings["kernel"] = std::string(sim::kernel_name(kernel));
    return record;
}

}  // namespace

MatchAnswer match_answer(const MatchQuestion& question, const sim::Workers& workers) {
    if (!std::filesystem::exists(question.file))
        throw analysis::InputError(question.file.string(), "is no longer there; open it or record it again");
    const QuestionRun run =
        run_of(question.note, "match",
               {.contact_points = question.grid.contact_points, .player_forces = question.grid.forces});
    const sim::match::MatchPlan plan = match_plan(known_place(run, question), question.grid);
    const analysis::SoundBlocks sound =
        watched(analysis::blocks_of_file(question.file), part_of(workers, {0.0, sim::match::listening_share}), passes);
    MatchAnswer answer{.asked = {.run = record_of(run, plan, workers.kernel),
                                 .file = question.file.string(),
                                 .file_hash = {},
                                 .reference_pitch = run.preset.reference_pitch,
                                 .temperament = run.preset.temperament,
                                 .region_share = plan.region_share},
                       .match = match_recording(sound, run.preset, plan, workers)};
    answer.asked.file_hash = sim::report::file_hash(question.file);
    return answer;
}

}  // namespace gui
