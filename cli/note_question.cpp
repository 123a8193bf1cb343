// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/note_question.hpp"

#include "analysis/errors.hpp"
#include "sim/security.hpp"

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

std::optional<double> place_asked(Question& question, const sim::Note& note) {
    question.note_usual(contact_option.key, "best");
    const std::optional<double> place = question.one_contact();
    if (place) sim::check_contact(note, *place);
    return place;
}

double best_place(const sim::Note& note, const sim::Player& player, const sim::MapGrid& grid,
                  const sim::Workers& workers) {
    const sim::BandResult band = sim::find_band(note, player, grid, workers);
    if (band.best) return *band.best;
    throw analysis::OutputError("best contact point", "no stroke of the range speaks anywhere on this note (" +
                                                          band.reason +
                                                          "); give --contact-mm to hear one all the same");
}

void ask_grid(Question& question, sim::MapGrid& grid) {
    grid.contact_points = question.whole(contact_points_option, grid.contact_points, {2, 400, ""});
    grid.player_forces = question.whole(forces_option, grid.player_forces, {2, 200, ""});
}

void require_force_range(const Question& question) {
    if (std::holds_alternative<double>(question.run.settings.at("force_newtons")))
        throw analysis::InputError("--force-newtons", "must be a range A:B here (0.1:0.4); note takes a single force");
}

}  // namespace cli
