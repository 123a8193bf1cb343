// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/run_record.hpp"
#include "sim/skew.hpp"

#include <string>

/// The answer of `skew` as text.
namespace sim::report {

struct AskedSkew {
    RunRecord run;
    Player player;                 ///< in force
    double reference_pitch = 0.0;  ///< Hz of A4, in force
    double stroke_length = 0.0;    ///< m
};

std::string skew_json(const AskedSkew& asked, const std::vector<SkewResult>& results);
/// A line for each note and angle.
std::string skew_csv(const AskedSkew& asked, const std::vector<SkewResult>& results);
std::string skew_table(const AskedSkew& asked, const std::vector<SkewResult>& results);
/// The angle that each note bears, in plain sentences.
std::string skew_in_words(const AskedSkew& asked, const std::vector<SkewResult>& results);

}  // namespace sim::report
