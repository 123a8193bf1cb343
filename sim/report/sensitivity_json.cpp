// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/sensitivity_report.hpp"

#include <cmath>

namespace sim::report {
namespace {

Json percent(const std::optional<double>& share) { return share ? rounded(100.0 * *share) : Json(nullptr); }

std::optional<double> grown(const std::optional<double>& log_ratio) {
    return log_ratio ? std::optional(std::expm1(*log_ratio)) : std::nullopt;
}

const char* direction_word(const SensitivityRow& row) {
    if (row.direction == Direction::none) return "none";
    if (row.kind == RowKind::grid) return row.direction == Direction::up ? "finer" : "coarser";
    return row.direction == Direction::up ? "up" : "down";
}

double factor_of(const SensitivityRow& row, double factor) {
    if (row.direction == Direction::none) return 1.0;
    return row.direction == Direction::up ? factor : 1.0 / factor;
}

/// Adds name, group, meaning, source, direction, factor, and both values.
void add_change(Json& part, const SensitivityRow& row, const Sensitivity& all) {
    const double factor = factor_of(row, all.plan.factor);
    part["constant"] = row.kind == RowKind::nominal ? "nominal"
                       : row.kind == RowKind::grid  ? "grid"
                                                    : row.constant->name;
    part["direction"] = direction_word(row);
    part["factor"] = rounded(factor);
    if (row.constant == nullptr) return;
    part["group"] = constant_group_name(row.constant->group);
    part["what"] = row.constant->what;
    part["source"] = constant_source(*row.constant, all.subject.preset);
    Subject changed = all.subject;
    row.constant->scale(changed, factor);
    part["unit"] = row.constant->unit;
    part["nominal"] = rounded(row.constant->nominal(all.subject));
    part["changed"] = rounded(row.constant->nominal(changed));
}

Json rule_part(const RuleAnswer& rule) {
    return {{"verdict", rule_verdict_name(rule.verdict)},
            {"rank_correlation", rounded(rule.correlation)},
            {"top_over_lowest_ratio", rounded(rule.ratio)},
            {"follows_length", rounded(rule.follows)},
            {"stops", rule.stops}};
}

/// Band edges where there is a band, else the stretch's.
void add_edges(Json& part, const BandResult& band) {
    const std::optional<Band>& edges = band.band ? band.band : band.stretch;
    part["edges_of"] = band.band ? Json("band") : band.stretch ? Json("stretch") : Json(nullptr);
    part["near_mm"] = edges ? rounded_mm(edges->near) : Json(nullptr);
    part["far_mm"] = edges ? rounded_mm(edges->far) : Json(nullptr);
    part["near_bound"] = edges ? fault_part(edges->near_bound) : Json(nullptr);
    part["far_bound"] = edges ? fault_part(edges->far_bound) : Json(nullptr);
}

Json note_of(const SensitivityNote& note, const SensitivityNote& nominal, bool shown) {
    const std::optional<double>& best = note.band.best;
    const std::optional<double>& was = nominal.band.best;
    Json part;
    part["stop_semitones"] = rounded(note.stop);
    part["sounding_length_mm"] = rounded_mm(note.sounding_length);
    part["best_mm"] = rounded_mm(best);
    part["best_shift_mm"] = best && was ? rounded_mm(*best - *was) : Json(nullptr);
    part["best_shift_percent"] = percent(shift(best, was));
    part["security"] = rounded(note.band.at_best.security);
    add_edges(part, note.band);
    if (!shown) return part;
    part["force_at_mm"] = rounded_mm(was);
    part["force_min_newtons"] = rounded(note.forces.low);
    part["force_min_shift_percent"] = percent(shift(note.forces.low, nominal.forces.low));
    part["force_max_newtons"] = rounded(note.forces.high);
    part["force_max_shift_percent"] = percent(shift(note.forces.high, nominal.forces.high));
    return part;
}

Json row_part(const SensitivityRow& row, const Sensitivity& all) {
    Json part;
    add_change(part, row, all);
    part["rule"] = rule_part(row.rule);
    part["notes"] = Json::array();
    for (std::size_t i = 0; i < row.notes.size(); ++i)
        part["notes"].push_back(note_of(row.notes[i], all.rows.front().notes[i], all.shown[i]));
    return part;
}

Json strengths_part(const Sensitivity& all) {
    Json part = Json::array();
    for (const Strength& strength : all.strengths)
        part.push_back({{"constant", strength.constant == nullptr ? "grid" : strength.constant->name},
                        {"best_percent", percent(grown(strength.best))},
                        {"force_min_percent", percent(grown(strength.force_min))},
                        {"force_max_percent", percent(grown(strength.force_max))}});
    return part;
}

Json names_part(const std::vector<const Constant*>& constants) {
    Json part = Json::array();
    for (const Constant* constant : constants) part.push_back(constant->name);
    return part;
}

/// Each of a row's notes beside what it shares with the others.
Json lines_part(const Sensitivity& all) {
    Json lines = Json::array();
    for (const SensitivityRow& row : all.rows) {
        const Json part = row_part(row, all);
        for (const Json& note : part["notes"]) {
            Json line = part;
            line.erase("notes");
            line.update(note);
            lines.push_back(line);
        }
    }
    return lines;
}

}  // namespace

std::string sensitivity_json(const AskedSensitivity& asked, const Sensitivity& all) {
    Json document;
    document["run"] = run_part(asked.run);
    document["string"] = all.subject.open.name;
    document["factor"] = rounded(all.plan.factor);
    document["grid"] = {{"contact_points", all.plan.grid.contact_points}, {"forces", all.plan.grid.player_forces}};
    document["rule"] = rule_in_words();
    document["rows"] = Json::array();
    for (const SensitivityRow& row : all.rows) document["rows"].push_back(row_part(row, all));
    document["strengths"] = strengths_part(all);
    document["not_in_force"] = names_part(all.not_in_force);
    return json_text(document);
}

std::string sensitivity_csv(const AskedSensitivity&, const Sensitivity& all) {
    return csv_text(lines_part(all), {"constant",
                                      "direction",
                                      "factor",
                                      "group",
                                      "what",
                                      "source",
                                      "unit",
                                      "nominal",
                                      "changed",
                                      "rule/verdict",
                                      "rule/rank_correlation",
                                      "rule/top_over_lowest_ratio",
                                      "rule/follows_length",
                                      "rule/stops",
                                      "stop_semitones",
                                      "sounding_length_mm",
                                      "best_mm",
                                      "best_shift_mm",
                                      "best_shift_percent",
                                      "security",
                                      "edges_of",
                                      "near_mm",
                                      "far_mm",
                                      "near_bound",
                                      "far_bound",
                                      "force_at_mm",
                                      "force_min_newtons",
                                      "force_min_shift_percent",
                                      "force_max_newtons",
                                      "force_max_shift_percent"});
}

}  // namespace sim::report
