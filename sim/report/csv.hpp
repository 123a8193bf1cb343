// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/json_values.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace sim::report {

/// Comma-separated lines, a heading first: a row for each object of the list `rows`.  A column is a key, or keys joined
/// by "/" for an object inside ("band/near_mm", headed band_near_mm).  What is missing or null stays empty.
std::string csv_text(const Json& rows, const std::vector<std::string_view>& columns);

}  // namespace sim::report
