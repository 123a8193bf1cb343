// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/ends.hpp"
#include "sim/report/window_report.hpp"

#include <string>

/// The answer of `ends` as text.
namespace sim::report {

std::string ends_json(const Asked& asked, const Ends& ends);
/// A line for each end and contact point.
std::string ends_csv(const Asked& asked, const Ends& ends);
std::string ends_table(const Asked& asked, const Ends& ends);
/// What a bare finger costs against a fret, in plain sentences.
std::string ends_in_words(const Ends& ends);

/// "fret", "finger Q 100".
std::string end_words(const StringEnd& end);

}  // namespace sim::report
