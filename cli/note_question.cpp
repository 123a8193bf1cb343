// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/note_question.hpp"

#include "analysis/errors.hpp"

namespace cli {

sim::Note note_asked(Question& question) {
    const double stop = question.one_stop();
    return sim::make_note(question.preset, question.string, stop, question.stop_end);
}

sim::report::Asked asked_of(const Question& question, const sim::Note& note) {
    return {.run = question.run,
            .note = note,
            .player = question.preset.player,
            .reference_pitch = question.preset.reference_pitch};
}

void require_force_range(const Question& question) {
    if (std::holds_alternative<double>(question.run.settings.at("force_newtons")))
        throw analysis::InputError("--force-newtons", "must be a range A:B here (0.1:0.4); note takes a single force");
}

}  // namespace cli
