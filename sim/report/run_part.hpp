// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/json_values.hpp"
#include "sim/report/run_record.hpp"

namespace sim::report {

/// The "run" object: program, version, command, preset (name, hash and whole), settings.
Json run_part(const RunRecord& run);

}  // namespace sim::report
