// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/csv.hpp"
#include "sim/report/passage_bow.hpp"
#include "sim/report/run_part.hpp"

#include <algorithm>
#include <iterator>

namespace sim::report {
namespace {

using passage::FingeredNote;
using passage::Fingering;
using passage::NoteAdvice;

/// One fingering and the tune it is for.
struct Told {
    const AskedPassage& asked;
    const Fingering& fingering;

    const score::Tune& tune() const { return asked.tune.tune; }
    const PresetString& string(int index) const { return asked.preset.strings[static_cast<std::size_t>(index)]; }
};

Json hand_place_part(int index) { return index < 0 ? Json(nullptr) : Json(index + 1); }

Json check_part(const Told& told, const NoteAdvice& advice) {
    if (!advice.check) return nullptr;
    Json part;
    part["string"] = told.string(advice.check->string).name;
    part["pitch"] = told.string(advice.check->string).pitch;
    part["interval"] = advice.check->interval;
    return part;
}

Json note_part(const Told& told, std::size_t i, const NoteAdvice& advice) {
    const score::TuneNote& note = told.tune().notes[i];
    const FingeredNote& fingered = told.fingering.notes[i];
    const double start = seconds_at(told.tune(), note.start);
    Json part;
    part["pitch"] = spelling_name(note.spelling);
    part["pitch_hz"] = rounded(fingered.pitch);
    part["pitch_cents"] = rounded(fingered.cents);
    part["bar"] = note.bar;
    part["start_s"] = rounded(start);
    part["duration_s"] = rounded(seconds_at(told.tune(), note.start + note.duration) - start);
    part["dynamic"] = note.dynamic.empty() ? Json(nullptr) : Json(note.dynamic);
    part["string"] = told.string(fingered.string).name;
    part["stop_semitones"] = rounded(fingered.stop);
    part["stop_from_nut_mm"] = rounded_mm(fingered.from_nut);
    part["stop"] = advice.stop;
    part["finger"] = fingered.finger;
    part["hand_place"] = hand_place_part(fingered.hand_place);
    part["to_previous_mm"] = rounded_mm(advice.to_previous);
    part["to_next_mm"] = rounded_mm(advice.to_next);
    part["open_check"] = check_part(told, advice);
    return part;
}

Json notes_part(const Told& told, const BowedPassage* bowed) {
    const std::vector<NoteAdvice> advice = note_advice(told.tune(), told.asked.preset, told.fingering);
    Json part = Json::array();
    for (std::size_t i = 0; i < advice.size(); ++i) {
        Json note = note_part(told, i, advice[i]);
        if (bowed != nullptr) add_bow(note, *bowed, i);
        part.push_back(std::move(note));
    }
    return part;
}

Json hand_places_part(const Fingering& fingering) {
    Json part = Json::array();
    for (const passage::HandPlace& place : fingering.hand_places) {
        Json one;
        one["name"] = place.name;
        one["stop_semitones"] = rounded(place.stop);
        one["stop_from_nut_mm"] = rounded_mm(place.from_nut);
        one["landmark"] = place.landmark.empty() ? Json(nullptr) : Json(place.landmark);
        one["first_note"] = place.first + 1;
        one["last_note"] = place.last + 1;
        one["why"] = place.why.empty() ? Json(nullptr) : Json(place.why);
        part.push_back(one);
    }
    return part;
}

/// The other fingerings, shortly.
Json alternatives_part(const AskedPassage& asked, const std::vector<Fingering>& found) {
    Json part = Json::array();
    for (std::size_t k = 0; k < found.size(); ++k) {
        if (k == asked.chosen) continue;
        const Told told{asked, found[k]};
        Json notes = Json::array();
        for (const FingeredNote& note : found[k].notes)
            notes.push_back({{"string", told.string(note.string).name},
                             {"finger", note.finger},
                             {"hand_place", hand_place_part(note.hand_place)}});
        part.push_back({{"fingering", k + 1},
                        {"cost", rounded(found[k].cost)},
                        {"notes", notes},
                        {"hand_places", hand_places_part(found[k])}});
    }
    return part;
}

Json warnings_part(const Told& told, const BowedPassage* bowed) {
    Json part = Json::array();
    std::vector<passage::Warning> warnings = fingering_warnings(told.tune(), told.asked.preset, told.fingering);
    if (bowed != nullptr) std::ranges::move(bow_warnings(told.tune(), bowed->bow), std::back_inserter(warnings));
    for (const passage::Warning& warning : warnings)
        part.push_back({{"note", warning.note + 1}, {"kind", warning.kind}, {"text", warning.text}});
    return part;
}

Json tune_part(const AskedPassage& asked) {
    const score::Tune& tune = asked.tune.tune;
    const score::TuneNote& last = tune.notes.back();
    Json part;
    part["title"] = tune.title.empty() ? Json(nullptr) : Json(tune.title);
    part["hash"] = "fnv1a64:" + asked.tune_hash;
    part["notes"] = tune.notes.size();
    part["seconds"] = rounded(seconds_at(tune, last.start + last.duration));
    return part;
}

}  // namespace

std::string passage_json(const AskedPassage& asked, const std::vector<Fingering>& found, const BowedPassage* bowed) {
    const Told told{asked, found[asked.chosen]};
    Json document;
    document["run"] = run_part(asked.run);
    document["tune"] = tune_part(asked);
    document["fingering"] = asked.chosen + 1;
    document["cost"] = rounded(told.fingering.cost);
    document["notes"] = notes_part(told, bowed);
    document["hand_places"] = hand_places_part(told.fingering);
    document["alternatives"] = alternatives_part(asked, found);
    document["warnings"] = warnings_part(told, bowed);
    if (bowed != nullptr) add_bow_path(document, *bowed);
    document["remarks"] = asked.tune.remarks;
    return json_text(document);
}

std::string passage_csv(const AskedPassage& asked, const std::vector<Fingering>& found, const BowedPassage* bowed) {
    std::vector<std::string> columns{"bar",
                                     "pitch",
                                     "pitch_hz",
                                     "pitch_cents",
                                     "start_s",
                                     "duration_s",
                                     "dynamic",
                                     "string",
                                     "stop_semitones",
                                     "stop_from_nut_mm",
                                     "stop",
                                     "finger",
                                     "hand_place",
                                     "to_previous_mm",
                                     "to_next_mm",
                                     "open_check/string",
                                     "open_check/interval"};
    if (bowed != nullptr) std::ranges::move(bow_columns(), std::back_inserter(columns));
    return csv_text(notes_part({asked, found[asked.chosen]}, bowed), {columns.begin(), columns.end()});
}

}  // namespace sim::report
