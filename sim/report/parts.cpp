// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/parts.hpp"

#include "analysis/units.hpp"

#include <cmath>

namespace sim::report {

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

Json spread_part(const std::optional<ToneSpread>& spread) {
    if (!spread) return nullptr;
    const auto three = [](const std::optional<Spread>& of, double (*shown)(double)) {
        if (!of) return Json(nullptr);
        return Json({{"low", rounded(shown(of->low))},
                     {"middle", rounded(shown(of->middle))},
                     {"high", rounded(shown(of->high))}});
    };
    const auto as_it_is = [](double value) { return value; };
    Json part;
    part["contact_mm"] = rounded_mm(spread->contact_point);
    part["strokes"] = spread->strokes;
    part["pitched"] = spread->pitched;
    part["pitch_cents"] = three(spread->pitch, as_it_is);
    part["brightness_f0"] = three(spread->brightness, as_it_is);
    part["level_db"] = three(spread->level, analysis::db_from_ratio);
    part["clarity_db"] = three(spread->clarity, as_it_is);
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
