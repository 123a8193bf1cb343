// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/run_record.hpp"
#include "sim/speeds.hpp"

#include <string>

/// The answer of `speeds` as text.
namespace sim::report {

/// What the texts of a study of speeds speak of.
struct AskedSpeeds {
    RunRecord run;
    double reference_pitch = 0.0;  ///< Hz of A4, in force
};

std::string speeds_json(const AskedSpeeds& asked, const SpeedStudy& study);
/// A line for each note, rule and speed.
std::string speeds_csv(const AskedSpeeds& asked, const SpeedStudy& study);
std::string speeds_table(const AskedSpeeds& asked, const SpeedStudy& study);

/// "division bass viol, string 1"; for headings.
std::string speeds_heading(const AskedSpeeds& asked, const SpeedStudy& study);
/// What a rule means, in a player's words.
std::string force_rule_words(ForceRule rule);

}  // namespace sim::report
