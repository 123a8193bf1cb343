// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/gauges.hpp"
#include "sim/report/run_record.hpp"

#include <string>

/// The answer of `gauges` as text.
namespace sim::report {

/// What the texts of strings speak of.
struct AskedGauges {
    RunRecord run;
    Preset preset;  ///< in force
};

/// "division bass viol, string 1 (D4)", or "…, all strings".
std::string gauges_heading(const AskedGauges& asked, const GaugeStudy& study);
/// Where a stop's band or, in brackets, its most secure stretch lies: "21 to 34", "(18 to 40)", "none".
std::string band_or_stretch(const BandResult& band);
/// What a row draws: "near the limit; pull +4 %".
std::string row_cautions(const GaugeStudy& study, const GaugeRow& row, double reference_pitch);

std::string gauges_json(const AskedGauges& asked, const GaugeStudy& study);
/// A line for each row and stop.
std::string gauges_csv(const AskedGauges& asked, const GaugeStudy& study);
std::string gauges_table(const AskedGauges& asked, const GaugeStudy& study);
/// The best candidate in plain sentences, or the pull of the set.
std::string gauges_answer_words(const GaugeStudy& study);
/// The same, then the cautions, a line each.
std::string gauges_in_words(const GaugeStudy& study);

}  // namespace sim::report
