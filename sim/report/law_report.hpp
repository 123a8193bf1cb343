// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/law_windows.hpp"
#include "sim/report/run_record.hpp"

#include <string>

/// The answer of `laws` as text.
namespace sim::report {

struct AskedLaws {
    RunRecord run;
    Player player;                 ///< in force
    double reference_pitch = 0.0;  ///< Hz of A4, in force
};

std::string laws_json(const AskedLaws& asked, const std::vector<LawWindow>& windows);
/// A line for each note and law.
std::string laws_csv(const AskedLaws& asked, const std::vector<LawWindow>& windows);
std::string laws_table(const AskedLaws& asked, const std::vector<LawWindow>& windows);
/// How wide each law's windows are on average.
std::string laws_in_words(const std::vector<LawWindow>& windows);

}  // namespace sim::report
