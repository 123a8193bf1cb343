// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/bow_path.hpp"
#include "sim/passage/note_kinds.hpp"

namespace sim::passage {

/// The way of the bow through these notes as a problem for find_path: each note counts alike, cut into stretches; in
/// rests nothing is at stake.  `notes` in time, at least one.
PathProblem path_problem(const Passage& passage, const std::vector<std::unique_ptr<KindStudy>>& studies,
                         const Workers& workers);

/// A path with its moments: from the first note's beginning to the last one's end.
Profile path_in_time(const PathProblem& problem, const BowPath& path, double start);

}  // namespace sim::passage
