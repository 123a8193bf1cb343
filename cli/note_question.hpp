// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/options_run.hpp"
#include "sim/report/window_report.hpp"

namespace cli {

/// The one note that was asked for.
sim::Note note_asked(Question& question);

/// What the report of one note speaks of.
sim::report::Asked asked_of(const Question& question, const sim::Note& note);

/// InputError where --force-newtons gives a single force but the command spreads it over a range.
void require_force_range(const Question& question);

}  // namespace cli
