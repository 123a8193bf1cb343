// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/match.hpp"

#include "sim/match/note_doubts.hpp"
#include "sim/match/note_samples.hpp"
#include "sim/match/region_place.hpp"
#include "sim/match/string_regions.hpp"
#include "sim/match/stroke_posterior.hpp"
#include "sim/preset_reader.hpp"

#include <algorithm>
#include <array>
#include <map>

namespace sim::match {
namespace {

constexpr std::array<std::string_view, 5> place_names{"inside", "partly", "outside", "no_band", "unknown"};
constexpr double told_share = 0.8;
constexpr double pitch_margin = 0.94;  // a semitone
constexpr double stop_margin = 0.67;   // a single note is still looked for over more than an octave
constexpr double band_share = 0.2;

using StopKey = std::pair<std::string, double>;
using PlayedStops = std::map<StopKey, PlayedStop>;

StopKey key_of(const StopCandidate& candidate) { return {candidate.string, candidate.stop}; }

/// Pitches that the instrument, its one string or stop can give, with some room.
analysis::PitchRange range_of(const Preset& preset, const KnownPlace& known) {
    const PitchEnds ends = held_pitches(preset, known);
    const double room = known.stop ? stop_margin : pitch_margin;
    return {ends.lowest * room, ends.highest / room};
}

/// One note on its way through.
struct Work {
    std::size_t note;  ///< index in the recording
    std::vector<StopCandidate> candidates;
};

std::vector<Work> works_of(Match& match, const std::vector<NoteSamples>& sounds, const Preset& preset,
                           const KnownPlace& known) {
    std::vector<Work> works;
    for (std::size_t i = 0; i < match.notes.size(); ++i) {
        const analysis::RecordedNote& note = match.recording.notes[i];
        NoteMatch& answer = match.notes[i];
        answer.abstains = doubt_of_sound(note);
        if (!answer.abstains.empty()) continue;
        answer.heard = heard_levels(sounds[i], *note.tone);
        answer.abstains = doubt_of_partials(answer.heard);
        if (!answer.abstains.empty()) continue;
        Work work{.note = i, .candidates = stop_candidates(preset, known, note.tone->hz)};
        if (work.candidates.empty())
            answer.abstains = "its pitch does not lie where it was looked for (" + held_range(preset, known) + ")";
        else
            works.push_back(std::move(work));
    }
    return works;
}

PlayedStops played_stops(const std::vector<Work>& works, const MatchPlan& plan, const Player& player,
                         const Workers& workers) {
    std::map<StopKey, const Note*> wanted;
    for (const Work& work : works)
        for (const StopCandidate& candidate : work.candidates) wanted.emplace(key_of(candidate), &candidate.note);
    PlayedStops stops;
    double done = 0.0;
    for (const auto& [key, note] : wanted) {
        const double each = 1.0 / static_cast<double>(wanted.size());
        PlayedStop& stop = stops[key];
        stop.spectra = stroke_spectra(*note, player, plan.grid, part_of(workers, {done, done + each}));
        stop.strokes = modelled_strokes(stop.spectra);
        done += each;
    }
    return stops;
}

/// Of the notes whose strings have strokes that speak; `works` keeps those alone.
std::vector<ComparedNote> compared_notes(std::vector<Work>& works, Match& match, const PlayedStops& stops,
                                         const Bridge& bridge) {
    std::vector<ComparedNote> notes;
    std::vector<Work> kept;
    for (Work& work : works) {
        std::vector<std::vector<ModelledStroke>> strokes;
        std::size_t count = 0;
        for (const StopCandidate& candidate : work.candidates) {
            strokes.push_back(stops.at(key_of(candidate)).strokes);
            count += strokes.back().size();
        }
        NoteMatch& answer = match.notes[work.note];
        if (count == 0) {
            answer.abstains = "no stroke of the player's forces speaks on this note";
            continue;
        }
        notes.push_back(compared_note(answer.heard, bridge, std::move(strokes)));
        kept.push_back(std::move(work));
    }
    works = std::move(kept);
    return notes;
}

void add_strings(NoteMatch& answer, const Work& work, const StrokePosterior& posterior, const PlayedStops& stops,
                 double share) {
    for (std::size_t c = 0; c < work.candidates.size(); ++c) {
        const std::vector<double>& weights = posterior.weights[c];
        double sum = 0.0;
        for (const double weight : weights) sum += weight;
        answer.strings.push_back({.place = work.candidates[c],
                                  .share = sum,
                                  .region = stroke_region(stops.at(key_of(work.candidates[c])), weights, share)});
    }
    std::ranges::stable_sort(answer.strings, std::greater(), &StringMatch::share);
    answer.ratio = ratio_region(answer.strings, share);
    answer.string_told = answer.strings.front().share >= told_share;
}

void add_spectra(NoteMatch& answer, const ComparedNote& note, const StrokePosterior& posterior) {
    const ModelledStroke& best = note.candidates[posterior.best_candidate][posterior.best_stroke];
    answer.numbers = note.numbers;
    for (const int number : note.numbers) answer.simulated.push_back(best.levels[static_cast<std::size_t>(number - 1)]);
    answer.body = posterior.body;
    answer.body_deviation = posterior.body_deviation;
    answer.misfit = posterior.misfit;
}

/// The same, telling nobody.
Workers silent(Workers workers) {
    workers.progress = {};
    return workers;
}

std::optional<PeriodPair> period_of(const NoteMatch& answer, const NoteSamples& samples, const analysis::Tone& tone,
                                    const Player& player) {
    const StringMatch& likeliest = answer.strings.front();
    const Touch touch{.contact_point = likeliest.region->best_contact, .force = likeliest.region->best_force};
    return period_pair(samples, tone, {.numbers = answer.numbers, .levels = answer.body}, likeliest.place.note,
                       started_stroke(likeliest.place.note, player, touch));
}

void add_periods(Match& match, const std::vector<NoteSamples>& samples, const Workers& workers) {
    for_each_job(static_cast<int>(match.notes.size()), silent(workers), [&](int job) {
        const auto i = static_cast<std::size_t>(job);
        if (match.notes[i].abstains.empty())
            match.notes[i].period = period_of(match.notes[i], samples[i], *match.recording.notes[i].tone, match.player);
    });
}

/// Each string and stop once.
void add_bands(Match& match, const MatchPlan& plan, const Workers& workers) {
    std::map<StopKey, BandResult> found;
    double done = 0.0;
    for (NoteMatch& answer : match.notes) {
        done += 1.0 / static_cast<double>(match.notes.size());
        if (!answer.abstains.empty()) continue;
        const StringMatch& likeliest = answer.strings.front();
        auto [entry, fresh] = found.try_emplace(key_of(likeliest.place));
        if (fresh)
            entry->second = find_band(likeliest.place.note, match.player, plan.band_grid,
                                      part_of(workers, {done - 1.0 / static_cast<double>(match.notes.size()), done}));
        answer.band = entry->second;
        answer.in_band =
            entry->second.band ? place_in(likeliest.region->contact, *entry->second.band) : BandPlace::no_band;
    }
}

}  // namespace

std::string_view band_place_name(BandPlace place) { return place_names[static_cast<std::size_t>(place)]; }

MatchPlan match_plan(const KnownPlace& known, const SpectraGrid& grid) {
    MatchPlan plan{.known = known, .grid = grid};
    plan.band_grid.contact_points = std::min(plan.band_grid.contact_points, grid.contact_points);
    plan.band_grid.player_forces = std::min(plan.band_grid.player_forces, grid.forces);
    return plan;
}

Match match_recording(const analysis::SoundBlocks& sound, const Preset& preset, const MatchPlan& plan,
                      const Workers& workers) {
    Match match{.recording = analysis::analyse(
                    sound, {.range = range_of(preset, plan.known), .intended_hz = 0.0, .threads = workers.threads}),
                .notes = {},
                .warnings = {},
                .player = preset.player};
    match.warnings = match.recording.warnings;
    const std::size_t count = std::min(plan.most_notes, match.recording.notes.size());
    if (count < match.recording.notes.size())
        match.warnings.push_back("Only the first " + std::to_string(count) + " notes were compared.");
    match.notes.resize(count);
    const std::vector<NoteSamples> samples = note_samples(sound, match.recording, count);
    std::vector<Work> works = works_of(match, samples, preset, plan.known);
    const double most = plan.bands ? 1.0 - band_share : 1.0;
    const PlayedStops stops = played_stops(works, plan, preset.player, part_of(workers, {listening_share, most}));
    const std::vector<ComparedNote> compared = compared_notes(works, match, stops, preset.bridge);
    const std::vector<StrokePosterior> posteriors = stroke_posteriors(compared, plan.prior);
    for (std::size_t i = 0; i < works.size(); ++i) {
        NoteMatch& answer = match.notes[works[i].note];
        add_strings(answer, works[i], posteriors[i], stops, plan.region_share);
        add_spectra(answer, compared[i], posteriors[i]);
        const StrokeRegion& region = *answer.strings.front().region;
        answer.abstains =
            doubt_of_finding({.misfit = answer.misfit, .contact = region.contact, .possible = region.contact_all});
    }
    if (plan.periods) add_periods(match, samples, workers);
    if (plan.bands) add_bands(match, plan, part_of(workers, {most, 1.0}));
    return match;
}

}  // namespace sim::match
