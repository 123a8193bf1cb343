// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/passage_report.hpp"
#include "sim/report/run_part.hpp"

namespace sim::report {
namespace {

using passage::BowedNote;
using passage::BowWay;
using passage::FingeredNote;
using passage::NoteKind;
using passage::PlayedNote;

const std::string& string_name(const AskedPassage& asked, int string) {
    return asked.preset.strings[static_cast<std::size_t>(string)].name;
}

/// Counted from 1, as people count; null for none.
Json counted(int index) { return index < 0 ? Json(nullptr) : Json(index + 1); }

void add_fingers(Json& part, const AskedPassage& asked, std::size_t i) {
    const FingeredNote& note = asked.fingerings.front().notes[i];
    const passage::NoteAdvice& advice = asked.advice[i];
    part["string"] = string_name(asked, note.string);
    part["stop_semitones"] = rounded(note.stop);
    part["stop_from_nut_mm"] = rounded_mm(note.from_nut);
    part["stop"] = advice.stop;
    part["finger"] = note.finger;
    part["hand_place"] = counted(note.hand_place);
    part["pitch_hz"] = rounded(note.pitch);
    part["pitch_cents"] = rounded(note.cents);
    part["to_previous_mm"] = rounded_mm(advice.to_previous);
    part["to_next_mm"] = rounded_mm(advice.to_next);
    part["open_check"] = nullptr;
    if (advice.check)
        part["open_check"] = {{"string", string_name(asked, advice.check->string)},
                              {"interval", advice.check->interval},
                              {"note_is_above", advice.check->note_is_above}};
}

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

Json notes_part(const AskedPassage& asked, const BowedPassage& bowed) {
    Json part = Json::array();
    for (std::size_t i = 0; i < asked.read.tune.notes.size(); ++i) {
        const score::TuneNote& written = asked.read.tune.notes[i];
        Json note;
        note["pitch"] = spelling_name(written.spelling);
        note["bar"] = written.bar;
        note["start_s"] = rounded(bowed.bow.notes[i].start);
        note["duration_s"] = rounded(bowed.bow.notes[i].duration);
        note["dynamic"] = written.dynamic.empty() ? Json(nullptr) : Json(written.dynamic);
        add_fingers(note, asked, i);
        add_bow(note, bowed, i);
        part.push_back(std::move(note));
    }
    return part;
}

Json hand_places_part(const passage::Fingering& fingering) {
    Json part = Json::array();
    for (const passage::HandPlace& place : fingering.hand_places)
        part.push_back({{"stop_semitones", rounded(place.stop)},
                        {"stop_from_nut_mm", rounded_mm(place.from_nut)},
                        {"name", place.name},
                        {"landmark", place.landmark.empty() ? Json(nullptr) : Json(place.landmark)},
                        {"first_note", place.first + 1},
                        {"last_note", place.last + 1},
                        {"why", place.why.empty() ? Json(nullptr) : Json(place.why)}});
    return part;
}

Json alternatives_part(const AskedPassage& asked) {
    Json part = Json::array();
    for (std::size_t k = 1; k < asked.fingerings.size(); ++k) {
        Json notes = Json::array();
        for (const FingeredNote& note : asked.fingerings[k].notes)
            notes.push_back({{"string", string_name(asked, note.string)},
                             {"stop_semitones", rounded(note.stop)},
                             {"finger", note.finger},
                             {"hand_place", counted(note.hand_place)}});
        part.push_back({{"cost", rounded(asked.fingerings[k].cost)},
                        {"notes", std::move(notes)},
                        {"hand_places", hand_places_part(asked.fingerings[k])}});
    }
    return part;
}

Json warnings_part(const AskedPassage& asked) {
    Json part = Json::array();
    for (const passage::Warning& warning : asked.warnings)
        part.push_back({{"note", warning.note + 1}, {"kind", warning.kind}, {"text", warning.text}});
    return part;
}

Json path_part(const Profile& path) {
    Json part = Json::array();
    for (const Profile::Point& point : path.points)
        part.push_back({{"time_s", rounded(point.time)}, {"contact_mm", rounded_mm(point.value)}});
    return part;
}

}  // namespace

std::string passage_json(const AskedPassage& asked, const BowedPassage& bowed) {
    Json document;
    document["run"] = run_part(asked.run);
    document["title"] = asked.read.tune.title;
    document["notes"] = notes_part(asked, bowed);
    document["hand_places"] = hand_places_part(asked.fingerings.front());
    document["cost"] = rounded(asked.fingerings.front().cost);
    document["alternatives"] = alternatives_part(asked);
    document["left_behind"] = {{"contact_mm", rounded_mm(bowed.bow.left_behind)}, {"suits_note", bowed.bow.lowest + 1}};
    document["path"] = path_part(bowed.bow.path);
    document["warnings"] = warnings_part(asked);
    document["remarks"] = asked.read.remarks;
    return json_text(document);
}

std::string passage_csv(const AskedPassage& asked, const BowedPassage& bowed) {
    std::vector<std::string> columns{"pitch",
                                     "bar",
                                     "start_s",
                                     "duration_s",
                                     "dynamic",
                                     "string",
                                     "stop",
                                     "finger",
                                     "stop_semitones",
                                     "stop_from_nut_mm",
                                     "hand_place",
                                     "pitch_hz",
                                     "pitch_cents",
                                     "to_previous_mm",
                                     "to_next_mm",
                                     "open_check/string",
                                     "open_check/interval",
                                     "contact_mm",
                                     "contact_from_mm",
                                     "contact_to_mm",
                                     "best_mm",
                                     "best_ratio",
                                     "security",
                                     "band/near_mm",
                                     "band/far_mm",
                                     "stretch/near_mm",
                                     "stretch/far_mm",
                                     "reason",
                                     "force_newtons",
                                     "speed_m_s",
                                     "hair_mm",
                                     "force_min_newtons",
                                     "force_max_newtons"};
    for (const char* way : {"follows", "left_behind"})
        for (const char* key : {"contact_mm", "security", "fails_by", "motion", "pitch_cents", "level_db", "why_not"})
            columns.push_back(std::string(way) + "/" + key);
    return csv_text(notes_part(asked, bowed), {columns.begin(), columns.end()});
}

}  // namespace sim::report
