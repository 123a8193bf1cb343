// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/run_record.hpp"
#include "sim/sensitivity.hpp"

#include <string>

/// The answer of `sensitivity` as text.
namespace sim::report {

/// What the texts speak of.
struct AskedSensitivity {
    RunRecord run;
    double reference_pitch = 0.0;  ///< Hz of A4, in force
};

std::string sensitivity_json(const AskedSensitivity& asked, const Sensitivity& sensitivity);
/// A line for each constant, direction and stop.
std::string sensitivity_csv(const AskedSensitivity& asked, const Sensitivity& sensitivity);
/// The rule under every change in one table, then what moves at each shown note.
std::string sensitivity_table(const AskedSensitivity& asked, const Sensitivity& sensitivity);

/// "no change", "grid finer", "shear_modulus x 1.5"
std::string row_name(const SensitivityRow& row, double factor);
/// "division bass viol, string 1: what the best place rests on"
std::string sensitivity_heading(const AskedSensitivity& asked, const Sensitivity& sensitivity);
/// "24 contact points x 9 forces"
std::string grid_words(const MapGrid& grid);

}  // namespace sim::report
