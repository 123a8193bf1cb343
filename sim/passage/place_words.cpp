// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/place_words.hpp"

#include "analysis/units.hpp"
#include "sim/text.hpp"

#include <array>
#include <cmath>

namespace sim::passage {
namespace {

constexpr int octave = 12;
constexpr double at_it = 0.5e-3;  // m

std::string beside(double distance, const std::string& landmark) {
    if (std::abs(distance) < at_it) return "at " + landmark;
    return fixed_number(analysis::mm_from_metres(std::abs(distance)), 0) + " mm " +
           (distance > 0.0 ? "above " : "below ") + landmark;
}

}  // namespace

std::string bare_words(const Preset& preset, const PresetString& string, double place) {
    if (preset.guide_fret) return beside(place - from_nut(string, octave), "the guide fret");
    if (preset.frets > 0)
        return beside(place - from_nut(string, fret_stop(preset, preset.frets)),
                      "fret " + std::to_string(preset.frets));
    return fixed_number(analysis::mm_from_metres(place), 0) + " mm from the nut";
}

std::string stop_words(const Preset& preset, const PresetString& string, const BoardPlace& place) {
    if (place.fret == 0) return "open";
    if (!place.bare) return "fret " + std::to_string(place.fret);
    return (preset.frets > 0 ? "bare board, " : "") + bare_words(preset, string, place.from_nut);
}

std::string hand_words(const Preset& preset, const Hand& hand, const HandState& state) {
    if (state.place <= preset.frets) return "fret " + std::to_string(state.place);
    if (preset.guide_fret && state.place == octave) return "the guide fret";
    const PresetString& string = preset.strings[static_cast<std::size_t>(state.string)];
    return bare_words(preset, string, hand.place_from_nut(state.place, state.string));
}

std::string at_words(const std::string& place) {
    const bool is_distance = !place.empty() && place.front() >= '0' && place.front() <= '9';
    return (is_distance ? "" : "at ") + place;
}

std::string landmark_words(const Preset& preset, const Hand& hand, int place) {
    if (place < 1 || !hand.has_landmark(place)) return "";
    if (place <= preset.frets) return "fret " + std::to_string(place);
    return preset.guide_fret ? "guide fret" : "octave harmonic";
}

std::string count_words(std::size_t count) {
    constexpr std::array<const char*, 13> words{"no",    "one",   "two",  "three", "four",   "five",  "six",
                                                "seven", "eight", "nine", "ten",   "eleven", "twelve"};
    return count < words.size() ? words[count] : std::to_string(count);
}

std::string note_words(const score::Tune& tune, std::size_t i) {
    const score::TuneNote& note = tune.notes[i];
    std::size_t in_bar = 1;
    for (std::size_t k = i; k > 0 && tune.notes[k - 1].bar == note.bar; --k) ++in_bar;
    return "bar " + std::to_string(note.bar) + ", note " + std::to_string(in_bar) + " (" +
           spelling_name(note.spelling) + ")";
}

}  // namespace sim::passage
