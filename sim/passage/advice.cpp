// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/advice.hpp"

#include "analysis/units.hpp"
#include "sim/passage/board.hpp"
#include "sim/passage/place_words.hpp"
#include "sim/text.hpp"

#include <array>
#include <cmath>
#include <cstdlib>
#include <utility>

namespace sim::passage {
namespace {

constexpr double same_spot = 1e-4;  // m

BoardPlace place_of(const score::Tune& tune, const Preset& preset, const Fingering& fingering, std::size_t i) {
    return board_place(tune.notes[i].spelling, preset, fingering.notes[i].string).value();
}

std::optional<OpenCheck> open_check(const score::TuneNote& note, const Preset& preset, int own_string) {
    constexpr std::array<std::pair<int, const char*>, 5> intervals{
        {{0, "unison"}, {12, "octave"}, {7, "fifth"}, {5, "fourth"}, {24, "two octaves"}}};
    for (const auto& [semitones, interval] : intervals)
        for (std::size_t s = 0; s < preset.strings.size(); ++s) {
            const int above = score::key_number(note.spelling) - open_key(preset.strings[s]);
            if (static_cast<int>(s) != own_string && std::abs(above) == semitones)
                return OpenCheck{static_cast<int>(s), interval, above >= 0};
        }
    return std::nullopt;
}

/// From one note's stop to a neighbour's, where one hand place holds both.
std::optional<double> spacing(const FingeredNote& from, const FingeredNote& to) {
    if (from.finger == 0 || to.finger == 0 || from.hand_place != to.hand_place) return std::nullopt;
    return to.from_nut - from.from_nut;
}

std::string mm_words(double metres, int decimals) {
    return fixed_number(analysis::mm_from_metres(std::abs(metres)), decimals) + " mm";
}

/// The notes and what is known of them, to look for trouble in.
struct Looked {
    const score::Tune& tune;
    const Preset& preset;
    const Fingering& fingering;
    const FingeringWeights& weights;

    const FingeredNote& at(std::size_t i) const { return fingering.notes[i]; }
    std::string stop(std::size_t i) const {
        return stop_words(preset, preset.strings[static_cast<std::size_t>(at(i).string)],
                          place_of(tune, preset, fingering, i));
    }
    bool is_bare(std::size_t i) const { return place_of(tune, preset, fingering, i).bare; }
};

std::optional<Warning> jump(const Looked& looked, std::size_t i) {
    const FingeredNote& from = looked.at(i - 1);
    const FingeredNote& to = looked.at(i);
    const bool shifts = from.finger > 0 && to.finger > 0 && from.hand_place != to.hand_place;
    if (looked.preset.frets == 0 || !shifts || looked.is_bare(i - 1) == looked.is_bare(i)) return std::nullopt;
    const double seconds =
        seconds_at(looked.tune, looked.tune.notes[i].start) - seconds_at(looked.tune, looked.tune.notes[i - 1].start);
    return Warning{i, "fret_to_bare",
                   note_words(looked.tune, i) + ": the hand jumps from " + looked.stop(i - 1) + " to " +
                       looked.stop(i) + " within " + short_number(std::round(100.0 * seconds) / 100.0) +
                       " s; such jumps need the slowest practice"};
}

std::optional<Warning> crowding(const Looked& looked, std::size_t i) {
    const FingeredNote& from = looked.at(i - 1);
    const FingeredNote& to = looked.at(i);
    const auto apart = spacing(from, to);
    const bool other_finger = from.finger != to.finger && from.string == to.string;
    if (!apart || !other_finger || std::abs(*apart) < same_spot) return std::nullopt;
    if (std::abs(*apart) >= looked.weights.pad) return std::nullopt;
    return Warning{i, "crowded",
                   note_words(looked.tune, i) + ": only " + mm_words(*apart, 1) +
                       " from the note before, less than a finger pad of " + mm_words(looked.weights.pad, 0) +
                       "; one finger must make room for the other"};
}

std::optional<Warning> mistuning(const Looked& looked, std::size_t i) {
    const double cents = looked.at(i).cents;
    if (std::abs(cents) <= looked.preset.player.pitch_tolerance) return std::nullopt;
    return Warning{
        i, "out_of_tune",
        note_words(looked.tune, i) + ": " + (looked.at(i).finger == 0 ? "open string " : "") +
            (looked.at(i).finger == 0 ? looked.preset.strings[static_cast<std::size_t>(looked.at(i).string)].name
                                      : looked.stop(i)) +
            " lies " + fixed_number(std::abs(cents), 0) + " cents " + (cents > 0.0 ? "above" : "below") +
            " the written note in this temperament"};
}

}  // namespace

std::vector<NoteAdvice> note_advice(const score::Tune& tune, const Preset& preset, const Fingering& fingering) {
    std::vector<NoteAdvice> advice;
    const std::vector<FingeredNote>& notes = fingering.notes;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        NoteAdvice note;
        const PresetString& string = preset.strings[static_cast<std::size_t>(notes[i].string)];
        note.stop = stop_words(preset, string, place_of(tune, preset, fingering, i));
        if (notes[i].finger > 0) note.check = open_check(tune.notes[i], preset, notes[i].string);
        if (i > 0) note.to_previous = spacing(notes[i], notes[i - 1]);
        if (i + 1 < notes.size()) note.to_next = spacing(notes[i], notes[i + 1]);
        advice.push_back(note);
    }
    return advice;
}

std::vector<Warning> fingering_warnings(const score::Tune& tune, const Preset& preset, const Fingering& fingering,
                                        const FingeringWeights& weights) {
    const Looked looked{tune, preset, fingering, weights};
    std::vector<Warning> warnings;
    for (std::size_t i = 0; i < fingering.notes.size(); ++i) {
        if (i > 0)
            for (const auto& found : {jump(looked, i), crowding(looked, i)})
                if (found) warnings.push_back(*found);
        if (const auto found = mistuning(looked, i)) warnings.push_back(*found);
    }
    return warnings;
}

}  // namespace sim::passage
