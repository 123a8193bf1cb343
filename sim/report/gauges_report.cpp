// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/gauges_report.hpp"

#include "analysis/units.hpp"
#include "sim/report/cautions_part.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"

namespace sim::report {
namespace {

Json gauge_part(const GaugeRow& row) {
    const Gauge& gauge = row.string.gauge;
    Json part;
    part["words"] = gauge_words(gauge);
    part["material"] = gauge.material;
    part["diameter_mm"] = rounded_mm(gauge.diameter);
    part["mass_g_m"] = rounded(analysis::g_m_from_kg_m(row.open.mass_per_length));
    part["bending_diameter_mm"] = rounded_mm(gauge.bending_diameter);
    return part;
}

Json stop_part(const ClimbStop& stop, const Player& player, double reference_pitch) {
    Json part = note_part(stop.note, reference_pitch);
    part["stop_from_nut_mm"] = rounded_mm(stop.from_nut);
    add_band(part, stop.band, stop.note, player);
    add_speaking(part, stop.speaking);
    add_heard(part, stop.follows ? stop.follows->stroke : std::nullopt, stop.note);
    return part;
}

void add_string(Json& part, const GaugeRow& row, double reference_pitch) {
    const double loss = loss_factor(row.open, 1.0);
    const BreakingRisk risk = breaking_risk(row.string, reference_pitch);
    const bool gut = row.string.gauge.material == "gut";
    part["wave_impedance_kg_s"] = rounded(wave_impedance(row.open));
    part["inharmonicity"] = rounded(inharmonicity(row.open));
    part["q_1"] = loss > 0.0 ? rounded(1.0 / loss) : Json(nullptr);
    part["tension_newtons"] = rounded(row.open.tension);
    part["breaking_product_hz_m"] = gut ? rounded(breaking_product(row.string, reference_pitch)) : Json(nullptr);
    part["to_likely_break_semitones"] = rounded(row.to_likely_break);
    part["breaking_risk"] = risk == BreakingRisk::none ? Json(nullptr) : Json(breaking_risk_words(risk));
}

Json row_part(const AskedGauges& asked, const GaugeStudy& study, std::size_t index) {
    const GaugeRow& row = study.rows[index];
    Json part;
    if (!study.whole_set) part["rank"] = index + 1;
    part["string"] = row.string.name;
    part["pitch"] = row.string.pitch;
    part["present"] = row.present;
    part["gauge"] = gauge_part(row);
    part["stops"] = Json::array();
    for (const ClimbStop& stop : row.stops)
        part["stops"].push_back(stop_part(stop, study.player, asked.preset.reference_pitch));
    add_string(part, row, asked.preset.reference_pitch);
    part["set_pull_newtons"] = rounded(row.set_pull);
    part["set_pull_change_percent"] = rounded(100.0 * (row.set_pull / study.set_up_pull - 1.0));
    part["cautions"] = cautions_part(row.cautions);
    return part;
}

Json rows_part(const AskedGauges& asked, const GaugeStudy& study) {
    Json rows = Json::array();
    for (std::size_t i = 0; i < study.rows.size(); ++i) rows.push_back(row_part(asked, study, i));
    return rows;
}

/// A row for each string and stop, flat.
Json csv_rows(const AskedGauges& asked, const GaugeStudy& study) {
    Json lines = Json::array();
    for (const Json& row : rows_part(asked, study)) {
        std::string cautions;
        for (const Json& caution : row.at("cautions"))
            cautions += (cautions.empty() ? "" : " ") + caution.at("caution").get<std::string>();
        for (const Json& stop : row.at("stops")) {
            Json line = row;
            line["stop"] = stop;
            line["cautions"] = cautions;
            lines.push_back(line);
        }
    }
    return lines;
}

}  // namespace

std::string gauges_json(const AskedGauges& asked, const GaugeStudy& study) {
    Json document;
    document["run"] = run_part(asked.run);
    document["whole_set"] = study.whole_set;
    document["aim"] = study.whole_set ? Json(nullptr) : Json(gauge_aim_name(study.aim));
    document["aim_stop_semitones"] = study.whole_set ? Json(nullptr) : rounded(study.aim_stop);
    document["set_up_pull_newtons"] = rounded(study.set_up_pull);
    document["pull_newtons"] = rounded(study.pull);
    document[study.whole_set ? "strings" : "candidates"] = rows_part(asked, study);
    document["cautions"] = cautions_part(study.cautions);
    return json_text(document);
}

std::string gauges_csv(const AskedGauges& asked, const GaugeStudy& study) {
    return csv_text(csv_rows(asked, study), {"rank",
                                             "string",
                                             "pitch",
                                             "present",
                                             "gauge/material",
                                             "gauge/diameter_mm",
                                             "gauge/mass_g_m",
                                             "stop/stop_semitones",
                                             "stop/pitch_name",
                                             "stop/band/near_mm",
                                             "stop/band/far_mm",
                                             "stop/stretch/near_mm",
                                             "stop/stretch/far_mm",
                                             "stop/best_mm",
                                             "stop/security",
                                             "stop/forgiveness_db",
                                             "stop/brightness_f0",
                                             "stop/force_min_newtons",
                                             "stop/force_max_newtons",
                                             "wave_impedance_kg_s",
                                             "inharmonicity",
                                             "q_1",
                                             "tension_newtons",
                                             "breaking_product_hz_m",
                                             "to_likely_break_semitones",
                                             "set_pull_newtons",
                                             "set_pull_change_percent",
                                             "cautions"});
}

}  // namespace sim::report
