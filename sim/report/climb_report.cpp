// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/climb_report.hpp"

#include "sim/report/climb_part.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/table.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"
#include "sim/window.hpp"

#include <array>

namespace sim::report {
namespace {

constexpr double mode_within = 50.0;  // cents

Json place_part(const ClimbPlace& place, const Note& note) {
    Json part;
    add_place(part, place.contact_point, note);
    add_security(part, place.security);
    add_heard(part, place.stroke, note);
    part["spread"] = spread_part(place.spread);
    return part;
}

Json stop_part(const ClimbStop& stop, const AskedClimb& asked, const Player& player) {
    Json part = note_part(stop.note, asked.reference_pitch);
    part["stop_from_nut_mm"] = rounded_mm(stop.from_nut);
    part["next_semitone_mm"] = rounded_mm(stop.next_semitone);
    part["cents_per_mm"] = rounded(stop.cents_per_mm);
    add_band(part, stop.band, stop.note, player);
    add_speaking(part, stop.speaking);
    part["left_behind"] = place_part(stop.left_behind, stop.note);
    part["follows"] = stop.follows ? place_part(*stop.follows, stop.note) : Json(nullptr);
    part["body_mode_hz"] = rounded(body_mode_near(asked.bridge, fundamental(stop.note.string), mode_within));
    return part;
}

std::string band_cell(const std::optional<Band>& band) {
    return band ? mm_cell(band->near, 0) + " to " + mm_cell(band->far, 0) : "none";
}

std::string bound_cell(const std::optional<Band>& band, Fault Band::*side) {
    return band ? std::string(fault_name((*band).*side)) : "-";
}

std::vector<std::string> row_of(const ClimbStop& stop, const AskedClimb& asked, const Player& player) {
    const BandResult& band = stop.band;
    const auto ratio = [&](double of) { return band.best ? std::optional(*band.best / of) : std::nullopt; };
    const Security& behind = stop.left_behind.security;
    return {short_number(stop.note.stop),
            pitch_name(fundamental(stop.note.string), asked.reference_pitch),
            mm_cell(stop.from_nut, 0),
            mm_cell(stop.next_semitone, 1),
            mm_cell(band.best, 0),
            fixed_cell(ratio(player.finger_width), 1),
            fixed_cell(ratio(stop.note.string.length), 3),
            band_cell(band.band),
            bound_cell(band.band, &Band::near_bound),
            bound_cell(band.band, &Band::far_bound),
            percent_cell(band.at_best.security),
            percent_cell(behind.security),
            behind.fails_by == Fault::none ? "-" : std::string(fault_name(behind.fails_by))};
}

/// The columns of one place's tone and of its spread over the player's forces.
void add_tone_columns(std::vector<std::string>& columns, const std::string& place) {
    const std::array<const char*, 4> heard{"level_db", "brightness_f0", "pitch_cents", "clarity_db"};
    for (const char* key : heard) columns.push_back(place + "/" + key);
    for (const char* count : {"strokes", "pitched"}) columns.push_back(place + "/spread/" + count);
    for (const char* key : heard)
        for (const char* of : {"/low", "/middle", "/high"}) columns.push_back(place + "/spread/" + key + of);
}

std::vector<std::string> tone_cells(const std::optional<ClimbPlace>& place, const Note& note) {
    if (!place || !place->stroke) return {"-", "-", "-", "-"};
    const StrokeResult& stroke = *place->stroke;
    return {fixed_cell(pitch_cents(stroke, note), 0), fixed_cell(brightness_f0(stroke), 1),
            fixed_cell(level_db(stroke), 1), fixed_cell(stroke.tone.clarity, 0)};
}

/// The tone of the two bows side by side.
std::string tone_table(const AskedClimb& asked, const Climb& climb) {
    std::vector<Table::Column> columns{{"stop", ""}, {"note", "", true}};
    for (const char* bow : {"follows", "behind"})
        for (const char* what : {"cents", "bright f0", "level dB", "clear dB"}) columns.push_back({bow, what});
    Table table(columns);
    for (const ClimbStop& stop : climb.stops) {
        std::vector<std::string> row{short_number(stop.note.stop),
                                     pitch_name(fundamental(stop.note.string), asked.reference_pitch)};
        for (const auto& place : {stop.follows, std::optional(stop.left_behind)})
            for (const std::string& cell : tone_cells(place, stop.note)) row.push_back(cell);
        table.add_row(row);
    }
    return "the tone at the middle force: cents from the note, brightness in fundamentals, level, clarity of "
           "pitch\n\n" +
           table.text();
}

}  // namespace

Json climb_stops_part(const AskedClimb& asked, const Climb& climb) {
    Json part = Json::array();
    for (const ClimbStop& stop : climb.stops) part.push_back(stop_part(stop, asked, climb.player));
    return part;
}

std::string climb_json(const AskedClimb& asked, const Climb& climb) {
    Json document;
    document["run"] = run_part(asked.run);
    document["stops"] = climb_stops_part(asked, climb);
    return json_text(document);
}

std::string climb_csv(const AskedClimb& asked, const Climb& climb) {
    std::vector<std::string> columns{
        "stop_semitones",   "stop_end",          "pitch_name",         "pitch_hz",
        "stop_from_nut_mm", "next_semitone_mm",  "cents_per_mm",       "sounding_length_mm",
        "best_mm",          "best_ratio",        "best_finger_widths", "security",
        "speaks_share",     "tone_share",        "fails_by",           "band/near_mm",
        "band/far_mm",      "band/near_bound",   "band/far_bound",     "band/width_mm",
        "reason",           "force_min_newtons", "force_max_newtons",  "forgiveness_db"};
    columns.push_back("follows/motion");
    add_tone_columns(columns, "follows");
    for (const char* key : {"contact_mm", "contact_ratio", "security", "speaks_share", "fails_by", "motion"})
        columns.push_back(std::string("left_behind/") + key);
    add_tone_columns(columns, "left_behind");
    columns.push_back("body_mode_hz");
    return csv_text(climb_stops_part(asked, climb), {columns.begin(), columns.end()});
}

std::string climb_table(const AskedClimb& asked, const Climb& climb) {
    Table table({{"stop", ""},
                 {"note", "", true},
                 {"from", "nut mm"},
                 {"semitone", "mm"},
                 {"best", "mm"},
                 {"bow", "fingers"},
                 {"place", "of string"},
                 {"band", "mm"},
                 {"nearer it", "fails by", true},
                 {"farther it", "fails by", true},
                 {"secure", "%"},
                 {"behind", "%"},
                 {"left behind", "fails by", true}});
    for (const ClimbStop& stop : climb.stops) table.add_row(row_of(stop, asked, climb.player));
    const std::string behind = mm_cell(climb.stops.front().left_behind.contact_point, 0);
    return asked.run.preset.name + ", string " + climb.stops.front().note.string.name + "; " +
           player_line(climb.player) + "\n\n" + table.text() + "\nleft behind: the bow stays " + behind +
           " mm from the bridge, where it suited the lowest stop\n\n" + tone_table(asked, climb);
}

}  // namespace sim::report
