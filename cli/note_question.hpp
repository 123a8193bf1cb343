// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/options_run.hpp"
#include "sim/batch.hpp"
#include "sim/report/window_report.hpp"

#include <optional>

namespace cli {

/// The one note that was asked for.
sim::Note note_asked(Question& question);

/// What the report of one note speaks of.
sim::report::Asked asked_of(const Question& question, const sim::Note& note);

/// The one place asked for, m; nothing where the note's best is wanted.  InputError for a range.
std::optional<double> place_asked(Question& question, const sim::Note& note);

/// How finely the best place is sought unless said otherwise.
inline constexpr sim::MapGrid best_place_grid{.contact_points = 24, .player_forces = 8, .more_forces = 0};
/// The note's best contact point, m; OutputError where nothing speaks.
double best_place(const sim::Note& note, const sim::Player& player, const sim::MapGrid& grid,
                  const sim::Workers& workers);

/// --contact-points and --forces, where they are given, put into a grid; both come into force.
void ask_grid(Question& question, sim::MapGrid& grid);

/// InputError where --force-newtons gives a single force but the command spreads it over a range.
void require_force_range(const Question& question);

}  // namespace cli
