// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/parts.hpp"

#include "analysis/units.hpp"

#include <cmath>

namespace sim::report {

std::optional<double> level_db(const StrokeResult& stroke) {
    if (!(stroke.tone.level > 0.0)) return std::nullopt;
    return analysis::db_from_ratio(stroke.tone.level);  // re 1 N
}

std::optional<double> pitch_cents(const StrokeResult& stroke, const Note& note) {
    if (!stroke.tone.pitch) return std::nullopt;
    return analysis::cents_between(*stroke.tone.pitch, fundamental(note.string));
}

std::optional<double> brightness_f0(const StrokeResult& stroke) {
    if (!stroke.tone.pitch || !(stroke.tone.centroid > 0.0)) return std::nullopt;
    return stroke.tone.centroid / *stroke.tone.pitch;
}

Json fault_part(Fault fault) {
    if (fault == Fault::none) return nullptr;
    return fault_name(fault);
}

Json note_part(const Note& note, double reference_pitch) {
    const double hz = fundamental(note.string);
    Json part;
    part["string"] = note.string.name;
    part["stop_semitones"] = rounded(note.stop);
    part["stop_end"] = stop_end_name(note.end);
    part["pitch_name"] = pitch_name(hz, reference_pitch);
    part["pitch_hz"] = rounded(hz);
    part["stop_from_nut_mm"] = rounded_mm(note.open_length - note.string.length);
    part["sounding_length_mm"] = rounded_mm(note.string.length);
    part["tension_newtons"] = rounded(note.string.tension);
    part["floor_mm"] = rounded_mm(note.floor);
    part["farthest_mm"] = rounded_mm(farthest_contact(note));
    return part;
}

void add_finger_step(Json& part, const Note& note) {
    const double length = note.string.length;
    part["next_semitone_mm"] = rounded_mm(length - stopped(note.string, 1.0).length);
    // d(1200 log2 f)/dx for f ~ 1/length
    part["cents_per_mm"] = rounded(analysis::metres_from_mm(1.0) * 1200.0 / (std::log(2.0) * length));
}

void add_place(Json& part, double contact_point, const Note& note) {
    part["contact_mm"] = rounded_mm(contact_point);
    part["contact_ratio"] = rounded(contact_point / note.string.length);
}

void add_security(Json& part, const Security& security) {
    part["security"] = rounded(security.security);
    part["speaks_share"] = rounded(security.speaks_share);
    part["tone_share"] = rounded(security.tone_share);
    part["fails_by"] = fault_part(security.fails_by);
}

void add_heard(Json& part, const std::optional<StrokeResult>& stroke, const Note& note) {
    for (const char* key : {"motion", "level_db", "brightness_f0", "pitch_cents", "clarity_db"}) part[key] = nullptr;
    if (!stroke) return;
    part["motion"] = motion_name(stroke->verdict.motion);
    part["level_db"] = rounded(level_db(*stroke));
    part["brightness_f0"] = rounded(brightness_f0(*stroke));
    part["pitch_cents"] = rounded(pitch_cents(*stroke, note));
    part["clarity_db"] = rounded(stroke->tone.clarity);
}

Json band_part(const std::optional<Band>& band) {
    if (!band) return nullptr;
    Json part;
    part["near_mm"] = rounded_mm(band->near);
    part["far_mm"] = rounded_mm(band->far);
    part["near_bound"] = fault_part(band->near_bound);
    part["far_bound"] = fault_part(band->far_bound);
    part["width_mm"] = rounded_mm(band->far - band->near);
    return part;
}

void add_band(Json& part, const BandResult& result, const Note& note, const Player& player) {
    const auto over = [&](double what) { return result.best ? rounded(*result.best / what) : Json(nullptr); };
    part["best_mm"] = rounded_mm(result.best);
    part["best_ratio"] = over(note.string.length);
    part["best_finger_widths"] = over(player.finger_width);
    add_security(part, result.at_best);
    part["band"] = band_part(result.band);
    part["other_bands"] = Json::array();
    for (const Band& band : result.other_bands) part["other_bands"].push_back(band_part(band));
    part["stretch"] = band_part(result.stretch);
    part["reason"] = result.reason;
}

}  // namespace sim::report
