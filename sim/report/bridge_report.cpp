// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/bridge_report.hpp"

#include "analysis/units.hpp"
#include "sim/preset_reader.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/json_values.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/table.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <numbers>

namespace sim::report {
namespace {

using analysis::degrees_from_radians;

bool is_beyond(const BridgeFit& fit, const BridgeMode& mode) {
    return std::ranges::find(fit.outside, mode) != fit.outside.end();
}

/// |Y| of the mode alone at its own frequency, dB re 1 m/s/N: q / (m w).
double peak_db(const BridgeMode& mode) {
    return analysis::db_from_ratio(mode.q / (mode.mass * 2.0 * std::numbers::pi * mode.frequency));
}

Json run_part(const AskedBridge& asked, const BridgeFit& fit) {
    Json settings = Json::object();
    settings["modes"] = asked.plan.modes ? Json(*asked.plan.modes) : Json("by error");
    const HzRange range = asked.plan.range.value_or(fit.range);
    settings["range_hz"] = Json::array({range.low, range.high});  // in full, or a point at the end may fall out
    if (asked.scale) settings["scale_m_s_per_n_s"] = *asked.scale;
    return file_run_part(
        {.command = "bridge", .version = asked.version, .file = asked.file, .file_hash = asked.file_hash}, settings);
}

/// In the shape of a preset's mode.
Json mode_part(const BridgeMode& mode) {
    Json part;
    part["hz"] = rounded(mode.frequency);
    part["q"] = rounded(mode.q);
    part["mass_kg"] = rounded(mode.mass);
    part["radiation"] = rounded(mode.radiation);
    return part;
}

Json error_part(const BridgeFit& fit) {
    Json part;
    part["rms_db"] = rounded(fit.error.rms_db);
    part["worst_db"] = rounded(fit.error.worst_db);
    part["worst_hz"] = rounded(fit.error.worst_hz);
    part["rms_phase_degrees"] = rounded(degrees_from_radians(fit.error.rms_phase));
    return part;
}

}  // namespace

std::string bridge_json(const AskedBridge& asked, const BridgeFit& fit) {
    Json document;
    document["run"] = run_part(asked, fit);
    document["range_hz"] = Json::array({rounded(fit.range.low), rounded(fit.range.high)});
    document["points"] = fit.points;
    document["error"] = error_part(fit);
    document["noise_share"] = rounded(fit.passivity.noise_share);
    document["least_real_share"] = rounded(fit.passivity.worst_share);
    document["modes_in_range"] = fit.modes.size() - fit.outside.size();
    Json modes = Json::array();
    for (const BridgeMode& mode : fit.modes) modes.push_back(mode_part(mode));
    document["bridge"]["modes"] = modes;
    document["beyond_range_hz"] = Json::array();
    for (const BridgeMode& mode : fit.outside) document["beyond_range_hz"].push_back(rounded(mode.frequency));
    document["remarks"] = fit.remarks;
    return json_text(document);
}

std::string bridge_csv(const BridgeFit& fit) {
    Json rows = Json::array();
    for (const BridgeMode& mode : fit.modes) {
        Json row = mode_part(mode);
        row["peak_db"] = rounded(peak_db(mode));
        row["in_range"] = !is_beyond(fit, mode);
        rows.push_back(row);
    }
    return csv_text(rows, {"hz", "q", "mass_kg", "radiation", "peak_db", "in_range"});
}

std::string bridge_table(const AskedBridge& asked, const BridgeFit& fit) {
    Table table({{"mode", "Hz"}, {"Q", ""}, {"mass", "kg"}, {"peak", "dB re 1 m/s/N"}, {"", "", true}});
    for (const BridgeMode& mode : fit.modes) {
        table.add_row({fixed_number(mode.frequency, 1), fixed_number(mode.q, 1), short_number(mode.mass),
                       fixed_number(peak_db(mode), 1), is_beyond(fit, mode) ? "beyond the range" : ""});
    }
    const FitError& error = fit.error;
    const std::string lines = value_lines(
        {{"range", short_number(fit.range.low) + " to " + short_number(fit.range.high) + " Hz, " +
                       std::to_string(fit.points) + " points"},
         {"error of |Y|", fixed_number(error.rms_db, 2) + " dB RMS; worst " + fixed_number(error.worst_db, 1) +
                              " dB at " + short_number(error.worst_hz) + " Hz"},
         {"error of phase", fixed_number(degrees_from_radians(error.rms_phase), 1) + " degrees RMS"},
         {"noise", fixed_number(100.0 * fit.passivity.noise_share, 1) + " % of the points have Re Y below 0 (by more " +
                       "than " + fixed_number(100.0 * tolerated_real_share, 0) + " % of |Y|)"}});
    return "Modes fitted to " + one_line(asked.file) + "\n\n" + table.text() + "\n" + lines;
}

std::string bridge_in_words(const BridgeFit& fit) {
    std::string words;
    for (const std::string& remark : fit.remarks) words += remark + "\n";
    if (!fit.outside.empty())
        words += "Modes beyond the range stand for all that moves there; they are no measured modes.\n";
    return words +
           "How much each mode radiates can't be seen in an admittance: its weight is set to 1. In a preset, --json's "
           "\"bridge\" can be pasted as it is, or --preset and --save write a whole preset.";
}

std::string bridge_line(const BridgeFit& fit) {
    return short_number(fit.range.low) + " to " + short_number(fit.range.high) + " Hz, " +
           std::to_string(fit.modes.size() - fit.outside.size()) + " modes in it; error " +
           fixed_number(fit.error.rms_db, 2) + " dB and " + fixed_number(degrees_from_radians(fit.error.rms_phase), 1) +
           " degrees RMS";
}

}  // namespace sim::report
