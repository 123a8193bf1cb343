// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/climb.hpp"
#include "sim/report/run_record.hpp"

#include <string>

/// The answer of `climb` as text.
namespace sim::report {

/// What the texts of a climb speak of.
struct AskedClimb {
    RunRecord run;
    Bridge bridge;                 ///< in force, to name body modes near a note
    double reference_pitch = 0.0;  ///< Hz of A4, in force
};

std::string climb_json(const AskedClimb& asked, const Climb& climb);
/// A line for each stop.
std::string climb_csv(const AskedClimb& asked, const Climb& climb);
std::string climb_table(const AskedClimb& asked, const Climb& climb);

}  // namespace sim::report
