// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/window_report.hpp"
#include "sim/start_wedge.hpp"

#include <string>

/// The answer of `start` as text.
namespace sim::report {

std::string start_json(const Asked& asked, const StartAnswer& answer);
/// A line for each cell of the map.
std::string start_csv(const Asked& asked, const StartAnswer& answer);
/// A line for each acceleration, or each time of the force's rise.
std::string start_table(const Asked& asked, const StartAnswer& answer);
/// Plain sentences: how quickly to begin, under either limit, and how sure that is.
std::string start_in_words(const StartAnswer& answer);

/// "bow 40 mm from the bridge (1/17.2 of the string), from rest, up to 0.2 m/s"
std::string start_line(const StartMap& map);
/// "settled within 50 ms of the first slip (strict)"
std::string limit_words(const StartMap& map, StartLimit limit);

}  // namespace sim::report
