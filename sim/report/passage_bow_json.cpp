// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/passage_bow.hpp"

namespace sim::report {
namespace {

using passage::BowedNote;
using passage::BowWay;
using passage::NoteKind;
using passage::PlayedNote;

Json way_part(const passage::Passage& bow, std::size_t i, BowWay way, const PlayedNote& played) {
    const BowedNote& note = bow.notes[i];
    const bool follows = way == BowWay::follows;
    Json part;
    add_place(part, follows ? note.contact : bow.left_behind, kind_of(bow, note).note);
    add_security(part, follows ? note.security : note.left_behind);
    for (const char* key : {"motion", "pitch_cents", "level_db", "why_not"}) part[key] = nullptr;
    if (played.bowed) {
        part["motion"] = motion_name(played.verdict.motion);
        part["pitch_cents"] = rounded(played.cents);
        if (played.tone.level > 0.0) part["level_db"] = rounded(analysis::db_from_ratio(played.tone.level));
    }
    if (!sounds(played)) part["why_not"] = why_not(bow, i, way, played);
    return part;
}

}  // namespace

void add_bow(Json& part, const BowedPassage& bowed, std::size_t i) {
    const BowedNote& note = bowed.bow.notes[i];
    const NoteKind& kind = kind_of(bowed.bow, note);
    part["contact_mm"] = rounded_mm(note.contact);
    part["contact_from_mm"] = rounded_mm(note.from);
    part["contact_to_mm"] = rounded_mm(note.to);
    add_band(part, kind.band, kind.note, kind.player);
    part["force_newtons"] = rounded(note.force);
    part["speed_m_s"] = rounded(kind.player.speed);
    part["stroke_scale"] = rounded(note.stroke.scale);
    part["hair_mm"] = rounded_mm(note.stroke.hair);
    part["short_note"] = note.short_note;
    part["force_speaks"] = note.force_speaks;
    add_speaking(part, note.speaking);
    part["follows"] = way_part(bowed.bow, i, BowWay::follows, bowed.played.follows[i]);
    part["left_behind"] = way_part(bowed.bow, i, BowWay::left_behind, bowed.played.left_behind[i]);
}

std::vector<std::string> bow_columns() {
    std::vector<std::string> columns{
        "contact_mm",   "contact_from_mm", "contact_to_mm",     "best_mm",          "best_ratio", "security",
        "band/near_mm", "band/far_mm",     "stretch/near_mm",   "stretch/far_mm",   "reason",     "force_newtons",
        "speed_m_s",    "hair_mm",         "force_min_newtons", "force_max_newtons"};
    for (const char* way : {"follows", "left_behind"})
        for (const char* key : {"contact_mm", "security", "fails_by", "motion", "pitch_cents", "level_db", "why_not"})
            columns.push_back(std::string(way) + "/" + key);
    return columns;
}

void add_bow_path(Json& document, const BowedPassage& bowed) {
    document["left_behind"] = {{"contact_mm", rounded_mm(bowed.bow.left_behind)}, {"suits_note", bowed.bow.lowest + 1}};
    document["path"] = Json::array();
    for (const Profile::Point& point : bowed.bow.path.points)
        document["path"].push_back({{"time_s", rounded(point.time)}, {"contact_mm", rounded_mm(point.value)}});
}

}  // namespace sim::report
