// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/climb_report.hpp"
#include "sim/report/json_values.hpp"

namespace sim::report {

/// "stops" of a climb's JSON.
Json climb_stops_part(const AskedClimb& asked, const Climb& climb);

}  // namespace sim::report
