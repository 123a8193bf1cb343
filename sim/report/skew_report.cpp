// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/skew_report.hpp"

#include "analysis/units.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/table.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

namespace sim::report {
namespace {

using analysis::degrees_from_radians;

constexpr double borne_share = 0.8;  // of the security with the bow parallel

Json security_part(const Security& security) {
    Json part;
    add_security(part, security);
    return part;
}

Json rows_part(const AskedSkew& asked, const std::vector<SkewResult>& results) {
    Json rows = Json::array();
    for (const SkewResult& result : results)
        for (const SkewRow& row : result.rows) {
            Json part = note_part(result.note, asked.reference_pitch);
            add_place(part, result.contact_point, result.note);
            part["skew_degrees"] = rounded(degrees_from_radians(row.angle));
            part["drift_mm"] = rounded_mm(row.drift);
            part["drifting"] = security_part(row.drifting);
            part["sliding"] = security_part(row.sliding);
            rows.push_back(part);
        }
    return rows;
}

std::string fails_cell(const Security& security) {
    return security.fails_by == Fault::none ? "-" : std::string(fault_name(security.fails_by));
}

/// The greatest angle up to which the security stays near that of the parallel bow; 0 if none does.
double borne_angle(const SkewResult& result, Security SkewRow::*way) {
    double borne = 0.0;
    const double least = borne_share * result.rows.front().sliding.security;
    for (const SkewRow& row : result.rows) {
        if ((row.*way).security < least) break;
        borne = row.angle;
    }
    return borne;
}

}  // namespace

std::string skew_json(const AskedSkew& asked, const std::vector<SkewResult>& results) {
    Json document;
    document["run"] = run_part(asked.run);
    document["rows"] = rows_part(asked, results);
    return json_text(document);
}

std::string skew_csv(const AskedSkew& asked, const std::vector<SkewResult>& results) {
    return csv_text(rows_part(asked, results),
                    {"stop_semitones", "pitch_name", "pitch_hz", "sounding_length_mm", "contact_mm", "contact_ratio",
                     "skew_degrees", "drift_mm", "drifting/security", "drifting/fails_by", "sliding/security",
                     "sliding/speaks_share", "sliding/fails_by"});
}

std::string skew_table(const AskedSkew& asked, const std::vector<SkewResult>& results) {
    Table table({{"stop", ""},
                 {"note", "", true},
                 {"best", "mm"},
                 {"skew", "degrees"},
                 {"drift", "mm"},
                 {"drifting", "%"},
                 {"fails by", "", true},
                 {"sliding", "%"},
                 {"fails by", "", true}});
    for (const SkewResult& result : results)
        for (const SkewRow& row : result.rows)
            table.add_row({short_number(result.note.stop),
                           pitch_name(fundamental(result.note.string), asked.reference_pitch),
                           mm_cell(result.contact_point, 0), fixed_number(degrees_from_radians(row.angle), 0),
                           mm_cell(row.drift, 0), percent_cell(row.drifting.security), fails_cell(row.drifting),
                           percent_cell(row.sliding.security), fails_cell(row.sliding)});
    return asked.run.preset.name + ", string " + results.front().note.string.name + "; strokes of " +
           mm_cell(asked.stroke_length, 0) + " mm; " + player_line(asked.player) + "\n\n" + table.text() +
           "\ndrifting: the hair holds on and the contact wanders along the string; sliding: the hand keeps the place "
           "and "
           "the hair\nslides lengthwise. A hand does something between. %: strokes that speak and keep their tone.\n";
}

std::string skew_in_words(const AskedSkew& asked, const std::vector<SkewResult>& results) {
    std::string words;
    for (const SkewResult& result : results) {
        const std::string note = "On " + pitch_name(fundamental(result.note.string), asked.reference_pitch);
        if (result.rows.empty() || result.rows.front().sliding.security <= 0.0) {
            words += note + " nothing speaks, with the bow parallel or not. ";
            continue;
        }
        words += note + " a bow that drifts is as good as a parallel one up to " +
                 fixed_number(degrees_from_radians(borne_angle(result, &SkewRow::drifting)), 0) +
                 " degrees, one that slides up to " +
                 fixed_number(degrees_from_radians(borne_angle(result, &SkewRow::sliding)), 0) + ". ";
    }
    return words +
           "(As good: at least four fifths of its security. Common practice, no source: up to about 5 degrees "
           "passes unnoticed low down, past 10 to 15 it slides and whistles.)";
}

}  // namespace sim::report
