// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/playable.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "sim/passage/place_words.hpp"
#include "sim/preset_reader.hpp"

#include <algorithm>
#include <cmath>

namespace sim::passage {
namespace {

/// "E3 to E5": open to the last semitone on the board.
std::string range_words(const Preset& preset, const PresetString& low, const PresetString& high) {
    const double top = pitch_frequency(high.pitch, preset.reference_pitch) *
                       analysis::ratio_from_semitones(std::floor(last_stop(preset)));
    return low.pitch + " to " + pitch_name(top, preset.reference_pitch);
}

bool can_be_stopped(const Hand& hand, std::size_t i, int string, int finger) {
    for (int place = 0; place <= hand.places(); ++place)
        if (hand.note(i, {string, finger, place})) return true;
    return false;
}

bool is_playable(const Hand& hand, std::size_t i) {
    for (int string = 0; string < hand.strings(); ++string)
        for (int finger = 0; finger <= 4; ++finger)
            if (can_be_stopped(hand, i, string, finger)) return true;
    return false;
}

std::vector<std::string> string_names(const Preset& preset) {
    std::vector<std::string> names;
    for (const PresetString& string : preset.strings) names.push_back(string.name);
    return names;
}

/// Why the asked finger can't take it, given strings on which the note lies.
std::string finger_complaint(const Preset& preset, const Hand& hand, std::size_t i, const score::TuneNote& note) {
    const std::string asked = note.string ? " on string " + *note.string : "";
    if (note.finger == 0) return "has no open string" + asked + "; give a finger from 1 to 4, or none";
    for (int string = 0; string < hand.strings(); ++string) {
        const auto& at = hand.on_board(i, string);
        if (!at || !hand.is_free(i, string, note.finger.value_or(1))) continue;
        const std::string place = stop_words(preset, preset.strings[static_cast<std::size_t>(string)], *at);
        return "finger " + std::to_string(note.finger.value_or(1)) + " can't play it" + asked + ", where it is " +
               place + "; leave the finger out to see what can";
    }
    return "can't be played" + asked;
}

std::string complaint(const Preset& preset, const Hand& hand, std::size_t i, const score::TuneNote& note) {
    const auto by_pitch = [&](const PresetString& s) { return pitch_frequency(s.pitch, preset.reference_pitch); };
    const PresetString& lowest = *std::ranges::min_element(preset.strings, {}, by_pitch);
    const PresetString& highest = *std::ranges::max_element(preset.strings, {}, by_pitch);
    if (note.string) {
        const auto index = string_index(preset, *note.string);
        if (!index)
            return "is asked for on string \"" + one_line(*note.string) + "\"; the " + preset.name + " has " +
                   listed(string_names(preset));
        const PresetString& asked = preset.strings[static_cast<std::size_t>(*index)];
        if (!hand.on_board(i, *index))
            return "doesn't lie on string " + asked.name + ", which goes from " + range_words(preset, asked, asked);
        return finger_complaint(preset, hand, i, note);
    }
    const bool lies_somewhere = [&] {
        for (int s = 0; s < hand.strings(); ++s)
            if (hand.on_board(i, s)) return true;
        return false;
    }();
    if (lies_somewhere) return finger_complaint(preset, hand, i, note);
    return "lies off the " + preset.name + ", which goes from " + range_words(preset, lowest, highest);
}

}  // namespace

void require_playable(const score::Tune& tune, const Preset& preset, const Hand& hand) {
    for (std::size_t i = 0; i < tune.notes.size(); ++i)
        if (!is_playable(hand, i))
            throw analysis::InputError(note_words(tune, i), complaint(preset, hand, i, tune.notes[i]));
}

}  // namespace sim::passage
