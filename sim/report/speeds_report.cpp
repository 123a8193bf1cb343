// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/speeds_report.hpp"

#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/table.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

namespace sim::report {
namespace {

Json row_part(const SpeedRow& row, const AskedSpeeds& asked, const Player& usual) {
    Json part = note_part(row.note, asked.reference_pitch);
    part["force_rule"] = force_rule_name(row.rule);
    part["dynamic"] = row.dynamic.empty() ? Json(nullptr) : Json(row.dynamic);
    part["speed_m_s"] = rounded(row.player.speed);
    part["speed_factor"] = rounded(row.player.speed / usual.speed);
    part["force_newtons"] = Json::array({rounded(row.player.force_low), rounded(row.player.force_high)});
    add_band(part, row.band, row.note, row.player);
    add_speaking(part, row.speaking);
    add_heard(part, row.middle, row.note);
    return part;
}

Json rows_part(const AskedSpeeds& asked, const SpeedStudy& study) {
    Json part = Json::array();
    for (const SpeedRow& row : study.rows) part.push_back(row_part(row, asked, study.player));
    return part;
}

/// Which rows answer, by their places in "rows".
Json answers_part(const SpeedStudy& study) {
    Json part = Json::array();
    for (const SpeedAnswer& answer : speed_answers(study)) {
        part.push_back({{"stop_semitones", rounded(study.rows[answer.wants].note.stop)},
                        {"wants_row", answer.wants},
                        {"slow_row", answer.slow},
                        {"quick_row", answer.quick}});
    }
    return part;
}

Json dynamics_part() {
    Json part = Json::object();
    for (const Dynamic& dynamic : dynamics) part[std::string(dynamic.name)] = dynamic.factor;
    return part;
}

std::string forces_cell(const std::optional<ForceWindow>& window) {
    if (!window || !window->main) return "-";
    const ForceInterval& interval = window->intervals[*window->main];
    return newtons_cell(interval.low) + " to " + newtons_cell(interval.high);
}

/// "31 to 60"; in brackets where it is a stretch only.
std::string place_cell(const SpeedRow& row) {
    if (!row.place()) return "-";
    const std::string text = mm_cell(row.place()->near, 0) + " to " + mm_cell(row.place()->far, 0);
    return row.band.band ? text : "(" + text + ")";
}

std::vector<std::string> cells_of(const SpeedRow& row) {
    const Security& security = row.band.at_best;
    return {row.dynamic,
            short_number(row.player.speed),
            newtons_cell(row.player.force_low) + " to " + newtons_cell(row.player.force_high),
            mm_cell(row.band.best, 0),
            place_cell(row),
            row.place() ? mm_cell(row.place()->far - row.place()->near, 0) : "-",
            percent_cell(security.security),
            percent_cell(security.speaks_share),
            security.fails_by == Fault::none ? "-" : std::string(fault_name(security.fails_by)),
            forces_cell(row.speaking),
            row.middle ? fixed_cell(level_db(*row.middle), 1) : "-"};
}

Table empty_table() {
    return Table({{"", "", true},
                  {"speed", "m/s"},
                  {"bowed with", "N"},
                  {"best", "mm"},
                  {"band", "mm"},
                  {"wide", "mm"},
                  {"secure", "%"},
                  {"speaks", "%"},
                  {"fails", "mostly by", true},
                  {"force that speaks", "at the best, N"},
                  {"level", "dB"}});
}

bool starts_group(const std::vector<SpeedRow>& rows, std::size_t i) {
    return i == 0 || rows[i].rule != rows[i - 1].rule || !(rows[i].note.stop == rows[i - 1].note.stop);
}

std::string group_heading(const SpeedRow& row, double reference_pitch) {
    return "stop " + short_number(row.note.stop) + " (" + pitch_name(fundamental(row.note.string), reference_pitch) +
           "), " + force_rule_words(row.rule) + "\n\n";
}

}  // namespace

std::string force_rule_words(ForceRule rule) {
    switch (rule) {
        case ForceRule::same_forces:
            return "the same forces at every speed";
        case ForceRule::forces_with_speed:
            return "forces in proportion to the speed";
        case ForceRule::dynamics:
            break;
    }
    std::string words = "soft to loud, force and speed times";
    for (const Dynamic& dynamic : dynamics)
        words += std::string(&dynamic == &dynamics.front() ? " " : ", ") + std::string(dynamic.name) + " " +
                 short_number(dynamic.factor);
    return words;
}

std::string speeds_heading(const AskedSpeeds& asked, const SpeedStudy& study) {
    return asked.run.preset.name + ", string " + study.rows.front().note.string.name;
}

std::string speeds_json(const AskedSpeeds& asked, const SpeedStudy& study) {
    Json document;
    document["run"] = run_part(asked.run);
    document["dynamics"] = dynamics_part();
    document["rows"] = rows_part(asked, study);
    document["answers"] = answers_part(study);
    document["in_words"] = speeds_in_words(study);
    return json_text(document);
}

std::string speeds_csv(const AskedSpeeds& asked, const SpeedStudy& study) {
    Json rows = rows_part(asked, study);
    for (Json& row : rows) {
        row["force_low_newtons"] = row["force_newtons"][0];
        row["force_high_newtons"] = row["force_newtons"][1];
    }
    return csv_text(rows, {"stop_semitones",
                           "stop_end",
                           "pitch_name",
                           "pitch_hz",
                           "sounding_length_mm",
                           "force_rule",
                           "dynamic",
                           "speed_m_s",
                           "speed_factor",
                           "force_low_newtons",
                           "force_high_newtons",
                           "best_mm",
                           "best_ratio",
                           "security",
                           "speaks_share",
                           "tone_share",
                           "fails_by",
                           "band/near_mm",
                           "band/far_mm",
                           "band/near_bound",
                           "band/far_bound",
                           "band/width_mm",
                           "stretch/near_mm",
                           "stretch/far_mm",
                           "stretch/width_mm",
                           "reason",
                           "force_min_newtons",
                           "force_max_newtons",
                           "forgiveness_db",
                           "motion",
                           "level_db",
                           "brightness_f0",
                           "pitch_cents",
                           "clarity_db"});
}

std::string speeds_table(const AskedSpeeds& asked, const SpeedStudy& study) {
    std::string text =
        speeds_heading(asked, study) + "; " + player_line(study.player) + " where nothing else is said\n";
    Table table = empty_table();
    for (std::size_t i = 0; i < study.rows.size(); ++i) {
        const SpeedRow& row = study.rows[i];
        if (starts_group(study.rows, i)) {
            text += "\n" + group_heading(row, asked.reference_pitch);
            table = empty_table();
        }
        table.add_row(cells_of(row));
        if (i + 1 == study.rows.size() || starts_group(study.rows, i + 1)) text += table.text();
    }
    return text + "\nin brackets: no band, the most secure stretch\n";
}

}  // namespace sim::report
