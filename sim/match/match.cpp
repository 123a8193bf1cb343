// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/match.hpp"

#include "sim/match/note_doubts.hpp"
#include "sim/match/note_samples.hpp"
#include "sim/match/stroke_posterior.hpp"
#include "sim/preset_reader.hpp"

#include <algorithm>
#include <array>
#include <map>

namespace sim::match {
namespace {

constexpr std::array<std::string_view, 5> place_names{"inside", "partly", "outside", "no_band", "unknown"};
constexpr double told_share = 0.8;
constexpr double pitch_margin = 0.94;  // a semitone below the lowest note
constexpr double listening_share = 0.05;
constexpr double band_share = 0.2;

/// The strokes of one stop of one string.
struct PlayedStop {
    StrokeSpectra spectra;
    std::vector<ModelledStroke> strokes;
};
using StopKey = std::pair<std::string, double>;
using PlayedStops = std::map<StopKey, PlayedStop>;

StopKey key_of(const StopCandidate& candidate) { return {candidate.string, candidate.stop}; }

/// Pitches that the instrument, or its one string, can give.
analysis::PitchRange range_of(const Preset& preset, const KnownPlace& known) {
    const PitchEnds ends = held_pitches(preset, known);
    return {ends.lowest * pitch_margin, ends.highest / pitch_margin};
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

std::vector<ComparedNote> compared_notes(std::vector<Work>& works, Match& match, const PlayedStops& stops,
                                         const Bridge& bridge) {
    std::vector<ComparedNote> notes;
    std::erase_if(works, [&](const Work& work) {
        std::vector<std::vector<ModelledStroke>> strokes;
        std::size_t count = 0;
        for (const StopCandidate& candidate : work.candidates) {
            strokes.push_back(stops.at(key_of(candidate)).strokes);
            count += strokes.back().size();
        }
        NoteMatch& answer = match.notes[work.note];
        if (count == 0) {
            answer.abstains = "no stroke of the player's forces speaks on this note";
            return true;
        }
        notes.push_back(compared_note(answer.heard, bridge, std::move(strokes)));
        return false;
    });
    return notes;
}

/// Weights of one string's strokes summed over what is not asked for.
struct Sums {
    std::vector<double> contact;
    std::vector<double> force;
};
/// A stroke speaks for its contact point and, less and less, for what lies up to its neighbours': between them nothing
/// was played.
std::vector<double> spread_to_neighbours(const std::vector<double>& weights) {
    std::vector<double> spread(weights.size());
    const std::size_t last = weights.size() - 1;
    for (std::size_t x = 0; x < weights.size(); ++x) {
        spread[x] += 0.5 * weights[x];
        spread[x > 0 ? x - 1 : x] += 0.25 * weights[x];
        spread[std::min(x + 1, last)] += 0.25 * weights[x];
    }
    return spread;
}

Sums summed(const PlayedStop& stop, const std::vector<double>& weights) {
    Sums sums{std::vector<double>(stop.spectra.contact_points.size()), std::vector<double>(stop.spectra.forces.size())};
    for (std::size_t s = 0; s < weights.size(); ++s) {
        sums.contact[stop.strokes[s].contact] += weights[s];
        sums.force[stop.strokes[s].force] += weights[s];
    }
    return {spread_to_neighbours(sums.contact), spread_to_neighbours(sums.force)};
}

std::optional<StrokeRegion> region_of(const PlayedStop& stop, const std::vector<double>& weights, double share) {
    double sum = 0.0;
    for (const double weight : weights) sum += weight;
    if (!(sum > 0.0)) return std::nullopt;
    const Sums sums = summed(stop, weights);
    const std::vector<double>& contacts = stop.spectra.contact_points;
    const auto best = static_cast<std::size_t>(std::ranges::max_element(weights) - weights.begin());
    StrokeRegion region{.contact = shortest_region(contacts, sums.contact, share),
                        .contact_all = {contacts[stop.strokes.front().contact], contacts[stop.strokes.back().contact]},
                        .force = shortest_region(stop.spectra.forces, sums.force, share),
                        .best_contact = contacts[stop.strokes[best].contact],
                        .best_force = stop.spectra.forces[stop.strokes[best].force],
                        .contact_points = contacts,
                        .density = sums.contact};
    for (double& density : region.density) density /= sum;
    return region;
}

/// Over all strings by their shares.
Region ratio_over(const std::vector<StringMatch>& strings, double share) {
    constexpr int places = 400;
    double low = 1.0;
    double high = 0.0;
    for (const StringMatch& string : strings) {
        if (!string.region) continue;
        low = std::min(low, string.region->contact_points.front() / string.place.note.string.length);
        high = std::max(high, string.region->contact_points.back() / string.place.note.string.length);
    }
    const std::vector<double> ratios = even_in_ratio({low, high}, places);
    std::vector<double> weights(places, 0.0);
    for (const StringMatch& string : strings) {
        if (!string.region) continue;
        std::vector<double> own = string.region->contact_points;
        for (double& place : own) place /= string.place.note.string.length;
        const std::vector<double> moved = moved_weights(own, string.region->density, ratios);
        for (std::size_t k = 0; k < weights.size(); ++k) weights[k] += string.share * moved[k];
    }
    return shortest_region(ratios, weights, share);
}

void add_strings(NoteMatch& answer, const Work& work, const StrokePosterior& posterior, const PlayedStops& stops,
                 double share) {
    for (std::size_t c = 0; c < work.candidates.size(); ++c) {
        const std::vector<double>& weights = posterior.weights[c];
        double sum = 0.0;
        for (const double weight : weights) sum += weight;
        answer.strings.push_back({.place = work.candidates[c],
                                  .share = sum,
                                  .region = region_of(stops.at(key_of(work.candidates[c])), weights, share)});
    }
    std::ranges::stable_sort(answer.strings, std::greater(), &StringMatch::share);
    answer.ratio = ratio_over(answer.strings, share);
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

BandPlace place_in(const Region& region, const BandResult& band) {
    if (!band.band) return BandPlace::no_band;
    if (region.high < band.band->near || region.low > band.band->far) return BandPlace::outside;
    return region.low >= band.band->near && region.high <= band.band->far ? BandPlace::inside : BandPlace::partly;
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
        answer.in_band = place_in(likeliest.region->contact, entry->second);
    }
}

}  // namespace

std::string_view band_place_name(BandPlace place) { return place_names[static_cast<std::size_t>(place)]; }

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
