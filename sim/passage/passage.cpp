// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/passage.hpp"

#include "analysis/errors.hpp"
#include "sim/passage/passage_path.hpp"
#include "sim/passage/place_words.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>

namespace sim::passage {

namespace {

constexpr double maps_until = 0.85;  // of the work, for the progress bar
constexpr double path_until = 0.90;
constexpr double clock_tick = 1e-6;  // s

std::vector<BowedNote> notes_in_time(const score::Tune& tune, const Player& player) {
    std::vector<BowedNote> notes;
    for (const score::TuneNote& written : tune.notes) {
        BowedNote note{.start = seconds_at(tune, written.start)};
        const double lasts = seconds_at(tune, written.start + written.duration) - note.start;
        note.duration = std::round(lasts / clock_tick) * clock_tick;  // equal notes are equal to the last bit
        note.stroke = note_stroke({.dynamic = written.dynamic, .duration = note.duration}, player);
        notes.push_back(note);
    }
    return notes;
}

void require_bowable(const score::Tune& tune, const std::vector<BowedNote>& notes) {
    const auto refuse = [](const std::string& what) {
        throw analysis::InputError("tune", what + "; take a part of it, or the fingers alone");
    };
    if (notes.size() > most_bowed_notes)
        refuse("has " + std::to_string(notes.size()) + " notes, the bow's way is worked out for up to " +
               std::to_string(most_bowed_notes));
    const auto seconds = [](double time) { return short_number(time) + " s"; };
    for (std::size_t i = 0; i < notes.size(); ++i)
        if (notes[i].duration > longest_bowed_note)
            refuse(note_words(tune, i) + " lasts " + seconds(notes[i].duration) + ", a stroke here at most " +
                   seconds(longest_bowed_note));
    const double end = notes.back().start + notes.back().duration;
    if (end > longest_bowed_passage)
        refuse("lasts " + seconds(end) + ", the bow's way is worked out for up to " + seconds(longest_bowed_passage));
}

/// The note whose best place the bow left behind keeps: of the longest sounding string, the first of them.
std::size_t lowest_note(const Passage& passage) {
    const auto length = [&](const BowedNote& note) { return kind_of(passage, note).note.string.length; };
    return static_cast<std::size_t>(std::ranges::max_element(passage.notes, {}, length) - passage.notes.begin());
}

void place_bow(Passage& passage, const std::vector<std::unique_ptr<KindStudy>>& studies) {
    for (BowedNote& note : passage.notes) {
        note.from = value_at(passage.path, note.start);
        note.to = value_at(passage.path, note.start + note.duration);
        note.contact = value_at(passage.path, note.start + note.duration / 2.0);
        const Assessment& assessment = studies[static_cast<std::size_t>(note.kind)]->assessment;
        note.security = assessment.at(note.contact);
        note.left_behind = assessment.at(passage.left_behind);
    }
}

/// The middle, in ratio, of what the range and the forces that speak have in common.
void choose_force(BowedNote& note, const Player& player) {
    note.force = middle_force(player);
    if (!note.speaking.main) return;
    const ForceInterval& plays = note.speaking.intervals[*note.speaking.main];
    const double low = std::max(plays.low, player.force_low);
    const double high = std::min(plays.high, player.force_high);
    note.force_speaks = low <= high;
    if (note.force_speaks) note.force = std::sqrt(low * high);
}

/// For each note the first that shares its kind and place: one window serves them all.
std::vector<std::size_t> first_alike(const std::vector<BowedNote>& notes) {
    std::map<std::pair<int, double>, std::size_t> known;
    std::vector<std::size_t> first;
    for (std::size_t i = 0; i < notes.size(); ++i)
        first.push_back(known.try_emplace({notes[i].kind, notes[i].contact}, i).first->second);
    return first;
}

ForceWindow speaking_forces(const NoteKind& kind, double contact, const Workers& workers) {
    if (!can_stand(kind.note, contact)) return {};
    return started_window(kind.note, kind.player, contact, usual_scan(kind.note, kind.player, contact, workers));
}

void find_forces(Passage& passage, const Workers& workers) {
    const std::vector<std::size_t> first = first_alike(passage.notes);
    for_each_job(static_cast<int>(first.size()), workers, [&](int job) {
        const auto i = static_cast<std::size_t>(job);
        BowedNote& note = passage.notes[i];
        if (first[i] == i) note.speaking = speaking_forces(kind_of(passage, note), note.contact, alone(workers));
    });
    for (std::size_t i = 0; i < first.size(); ++i) {
        BowedNote& note = passage.notes[i];
        note.speaking = passage.notes[first[i]].speaking;
        choose_force(note, kind_of(passage, note).player);
    }
}

}  // namespace

Passage find_passage(const score::Tune& tune, const Fingering& fingering, const Preset& preset, const BowPlan& plan,
                     const Workers& workers) {
    assert(!tune.notes.empty() && fingering.notes.size() == tune.notes.size());
    Passage passage{.plan = plan, .kinds = {}, .notes = notes_in_time(tune, preset.player), .path = {}};
    require_bowable(tune, passage.notes);
    passage.kinds = kinds_of(passage.notes, fingering, preset);
    for (BowedNote& note : passage.notes) {
        const NoteKind& kind = kind_of(passage, note);
        note.short_note = note.duration < longest_speaking(kind.player, 1.0 / fundamental(kind.note.string));
    }
    const auto studies = study_kinds(passage.kinds, plan.grid, part_of(workers, {0.0, maps_until}));
    const PathProblem problem = path_problem(passage, studies, part_of(workers, {maps_until, path_until}));
    passage.path = path_in_time(problem, find_path(problem), passage.notes.front().start);
    passage.lowest = lowest_note(passage);
    const BandResult& suited = kind_of(passage, passage.notes[passage.lowest]).band;
    passage.left_behind = suited.best.value_or(passage.path.points.front().value);
    place_bow(passage, studies);
    find_forces(passage, part_of(workers, {path_until, 1.0}));
    return passage;
}

}  // namespace sim::passage
