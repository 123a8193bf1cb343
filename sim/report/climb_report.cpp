// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/climb_report.hpp"

#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/table.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"
#include "sim/window.hpp"

namespace sim::report {
namespace {

constexpr double mode_within = 50.0;  // cents

Json place_part(const ClimbPlace& place, const Note& note) {
    Json part;
    add_place(part, place.contact_point, note);
    add_security(part, place.security);
    add_heard(part, place.stroke, note);
    return part;
}

void add_speaking(Json& part, const std::optional<ForceWindow>& speaking) {
    for (const char* key : {"force_min_newtons", "force_max_newtons", "forgiveness_db"}) part[key] = nullptr;
    if (!speaking || !speaking->main) return;
    const ForceInterval& interval = speaking->intervals[*speaking->main];
    part["force_min_newtons"] = rounded(interval.low);
    part["force_max_newtons"] = rounded(interval.high);
    part["forgiveness_db"] = rounded(forgiveness(*speaking));
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

Json stops_part(const AskedClimb& asked, const Climb& climb) {
    Json part = Json::array();
    for (const ClimbStop& stop : climb.stops) part.push_back(stop_part(stop, asked, climb.player));
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

}  // namespace

std::string climb_json(const AskedClimb& asked, const Climb& climb) {
    Json document;
    document["run"] = run_part(asked.run);
    document["stops"] = stops_part(asked, climb);
    return json_text(document);
}

std::string climb_csv(const AskedClimb& asked, const Climb& climb) {
    return csv_text(stops_part(asked, climb), {"stop_semitones",
                                               "stop_end",
                                               "pitch_name",
                                               "pitch_hz",
                                               "stop_from_nut_mm",
                                               "next_semitone_mm",
                                               "cents_per_mm",
                                               "sounding_length_mm",
                                               "best_mm",
                                               "best_ratio",
                                               "best_finger_widths",
                                               "security",
                                               "speaks_share",
                                               "tone_share",
                                               "fails_by",
                                               "band/near_mm",
                                               "band/far_mm",
                                               "band/near_bound",
                                               "band/far_bound",
                                               "band/width_mm",
                                               "reason",
                                               "force_min_newtons",
                                               "force_max_newtons",
                                               "forgiveness_db",
                                               "follows/motion",
                                               "follows/level_db",
                                               "follows/brightness_f0",
                                               "follows/pitch_cents",
                                               "follows/clarity_db",
                                               "left_behind/contact_mm",
                                               "left_behind/contact_ratio",
                                               "left_behind/security",
                                               "left_behind/speaks_share",
                                               "left_behind/fails_by",
                                               "left_behind/motion",
                                               "left_behind/level_db",
                                               "left_behind/brightness_f0",
                                               "left_behind/pitch_cents",
                                               "body_mode_hz"});
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
           " mm from the bridge, where it suited the lowest stop\n";
}

}  // namespace sim::report
