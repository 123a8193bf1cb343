// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/cautions.hpp"
#include "sim/report/json_values.hpp"

#include <string>
#include <vector>

namespace sim::report {

/// [ { "caution", "about", "text", "value", "limit", "unit" }, … ]; nulls for what a caution lacks.
Json cautions_part(const std::vector<Caution>& cautions);

/// A line for each, after "Caution: "; empty for none.
std::string cautions_words(const std::vector<Caution>& cautions);

}  // namespace sim::report
