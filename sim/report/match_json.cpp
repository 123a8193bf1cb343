// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/match_report.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/tempered_pitch.hpp"

namespace sim::report {
namespace {

using match::Match;
using match::NoteMatch;
using match::StringMatch;

constexpr std::initializer_list<const char*> region_keys{"near_mm",
                                                         "far_mm",
                                                         "near_ratio",
                                                         "far_ratio",
                                                         "near_finger_widths",
                                                         "far_finger_widths",
                                                         "force_min_newtons",
                                                         "force_max_newtons",
                                                         "best_mm",
                                                         "best_ratio",
                                                         "best_force_newtons",
                                                         "possible_near_mm",
                                                         "possible_far_mm"};

/// Adds where the bow was and how firmly; nulls where nothing is said.
void add_region(Json& part, const StringMatch& string, const Player& player, bool says) {
    for (const char* key : region_keys) part[key] = nullptr;
    if (!says || !string.region) return;
    const match::StrokeRegion& region = *string.region;
    const double length = string.place.note.string.length;
    part["near_mm"] = rounded_mm(region.contact.low);
    part["far_mm"] = rounded_mm(region.contact.high);
    part["near_ratio"] = rounded(region.contact.low / length);
    part["far_ratio"] = rounded(region.contact.high / length);
    part["near_finger_widths"] = rounded(region.contact.low / player.finger_width);
    part["far_finger_widths"] = rounded(region.contact.high / player.finger_width);
    part["force_min_newtons"] = rounded(region.force.low);
    part["force_max_newtons"] = rounded(region.force.high);
    part["best_mm"] = rounded_mm(region.best_contact);
    part["best_ratio"] = rounded(region.best_contact / length);
    part["best_force_newtons"] = rounded(region.best_force);
    part["possible_near_mm"] = rounded_mm(region.contact_all.low);
    part["possible_far_mm"] = rounded_mm(region.contact_all.high);
}

Json string_part(const StringMatch& string, const AskedMatch& asked, const Player& player, bool says) {
    Json part;
    part["string"] = string.place.string;
    part["stop_semitones"] = rounded(string.place.stop);
    part["stop_end"] = stop_end_name(string.place.note.end);
    part["stop_from_nut_mm"] = rounded_mm(string.place.note.open_length - string.place.note.string.length);
    part["sounding_length_mm"] = rounded_mm(string.place.note.string.length);
    part["off_cents"] = rounded(string.place.off_cents);
    part["likelihood_share"] = says ? rounded(string.share) : Json(nullptr);
    part["region_share"] = rounded(asked.region_share);
    part["speed_m_s"] = rounded(player.speed);
    add_region(part, string, player, says);
    return part;
}

Json partials_part(const NoteMatch& note) {
    Json list = Json::array();
    std::size_t compared = 0;
    for (const match::HeardLevel& level : note.heard) {
        Json part;
        part["number"] = level.number;
        part["hz"] = rounded(level.hz);
        part["heard_db"] = rounded(level.level);
        part["noise_db"] = rounded(level.noise);
        for (const char* key : {"simulated_db", "body_db", "body_error_db"}) part[key] = nullptr;
        if (compared < note.numbers.size() && note.numbers[compared] == level.number) {
            part["simulated_db"] = rounded(note.simulated[compared]);
            part["body_db"] = rounded(note.body[compared]);
            part["body_error_db"] = rounded(note.body_deviation[compared]);
            ++compared;
        }
        list.push_back(std::move(part));
    }
    return list;
}

Json numbers_part(const std::vector<double>& numbers) {
    Json list = Json::array();
    for (const double number : numbers) list.push_back(rounded(number));
    return list;
}

Json density_part(const StringMatch& string) {
    Json list = Json::array();
    for (std::size_t x = 0; x < string.region->contact_points.size(); ++x)
        if (string.region->density[x] > 0.0)
            list.push_back({{"contact_mm", rounded_mm(string.region->contact_points[x])},
                            {"likelihood_share", rounded(string.region->density[x])}});
    return list;
}

/// What stands before the strings.
Json heading_part(const analysis::RecordedNote& heard, const NoteMatch& note, const Tuning& tuning) {
    Json part;
    part["start_s"] = rounded(heard.span.start);
    part["end_s"] = rounded(heard.span.end);
    for (const char* key : {"pitch_hz", "pitch_name", "pitch_cents"}) part[key] = nullptr;
    if (heard.tone) {
        const TemperedPitch pitch = nearest_pitch(heard.tone->hz, tuning);
        part["pitch_hz"] = rounded(heard.tone->hz);
        part["pitch_name"] = pitch.name;
        part["pitch_cents"] = rounded(pitch.cents);
    }
    part["abstains"] = note.abstains.empty() ? Json(nullptr) : Json(note.abstains);
    const bool says = note.abstains.empty();
    part["near_ratio"] = says ? rounded(note.ratio.low) : Json(nullptr);
    part["far_ratio"] = says ? rounded(note.ratio.high) : Json(nullptr);
    part["string_told"] = note.abstains.empty() && note.string_told;
    part["in_band"] = note.abstains.empty() ? Json(match::band_place_name(note.in_band)) : Json(nullptr);
    part["misfit"] = note.numbers.empty() ? Json(nullptr) : rounded(note.misfit);
    return part;
}

Json note_part(const AskedMatch& asked, const Match& match, std::size_t i) {
    const NoteMatch& note = match.notes[i];
    const bool says = note.abstains.empty();
    Json part = heading_part(match.recording.notes[i], note, tuning_of(asked));
    part["strings"] = Json::array();
    for (const StringMatch& string : note.strings) {
        Json one = string_part(string, asked, match.player, says);
        if (says && string.region) one["density"] = density_part(string);
        part["strings"].push_back(std::move(one));
    }
    part["band"] = note.band ? band_part(note.band->band) : Json(nullptr);
    part["band_best_mm"] = note.band ? rounded_mm(note.band->best) : Json(nullptr);
    part["band_reason"] = note.band ? Json(note.band->reason) : Json(nullptr);
    part["partials"] = partials_part(note);
    part["period_heard"] = note.period ? numbers_part(note.period->heard) : Json(nullptr);
    part["period_simulated"] = note.period ? numbers_part(note.period->simulated) : Json(nullptr);
    return part;
}

Json recording_part(const analysis::Recording& recording) {
    Json part;
    part["duration_s"] = rounded(recording.duration);
    part["sample_rate_hz"] = rounded(recording.sample_rate);
    part["channels"] = recording.channels;
    part["notes"] = recording.notes.size();
    return part;
}

}  // namespace

Tuning tuning_of(const AskedMatch& asked) {
    Tuning tuning{.reference_pitch = asked.reference_pitch, .temperament = asked.temperament};
    // rule_of_18 places frets and names no pitches
    if (tuning.temperament == Temperament::rule_of_18) tuning.temperament = Temperament::equal;
    return tuning;
}

std::string match_json(const AskedMatch& asked, const Match& match) {
    Json document;
    document["run"] = run_part(asked.run);
    document["run"]["sound"] = asked.file;
    document["run"]["sound_hash"] = asked.file_hash;
    document["recording"] = recording_part(match.recording);
    document["notes"] = Json::array();
    for (std::size_t i = 0; i < match.notes.size(); ++i) document["notes"].push_back(note_part(asked, match, i));
    document["warnings"] = match.warnings;
    return json_text(document);
}

std::string match_csv(const AskedMatch& asked, const Match& match) {
    Json rows = Json::array();
    for (std::size_t i = 0; i < match.notes.size(); ++i) {
        const NoteMatch& note = match.notes[i];
        const Json heading = heading_part(match.recording.notes[i], note, tuning_of(asked));
        if (note.strings.empty()) rows.push_back(heading);
        for (const StringMatch& string : note.strings) {
            Json row = heading;
            row.update(string_part(string, asked, match.player, note.abstains.empty()));
            rows.push_back(std::move(row));
        }
    }
    std::vector<std::string_view> columns{"start_s",          "end_s",          "pitch_hz",         "pitch_name",
                                          "pitch_cents",      "abstains",       "in_band",          "misfit",
                                          "string",           "stop_semitones", "stop_from_nut_mm", "off_cents",
                                          "likelihood_share", "region_share",   "speed_m_s"};
    columns.insert(columns.end(), region_keys.begin(), region_keys.end());
    return csv_text(rows, columns);
}

}  // namespace sim::report
