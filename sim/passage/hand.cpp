// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/hand.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstdlib>

namespace sim::passage {
namespace {

constexpr double same_spot = 1e-4;  // m, no finger feels less
constexpr int octave = 12;

}  // namespace

std::optional<int> string_index(const Preset& preset, const std::string& name) {
    const auto named = [&](auto member) -> std::optional<int> {
        const auto found = std::ranges::find(preset.strings, name, member);
        if (found == preset.strings.end()) return std::nullopt;
        return static_cast<int>(found - preset.strings.begin());
    };
    if (const auto by_name = named(&PresetString::name)) return by_name;
    if (const auto by_pitch = named(&PresetString::pitch)) return by_pitch;
    for (std::size_t s = 0; s < preset.strings.size(); ++s)
        if (name == std::to_string(s + 1)) return static_cast<int>(s);
    return std::nullopt;
}

Hand::Hand(const score::Tune& tune, const Preset& preset, const FingeringWeights& weights)
    : tune_(tune), preset_(preset), weights_(weights), places_(static_cast<int>(std::floor(last_stop(preset)))) {
    for (std::size_t i = 0; i < tune.notes.size(); ++i) notes_.push_back(timed(i));
}

Hand::Timed Hand::timed(std::size_t i) const {
    const score::TuneNote& note = tune_.notes[i];
    const double start = seconds_at(tune_, note.start);
    Timed timed;
    timed.length = seconds_at(tune_, note.start + note.duration) - start;
    if (i > 0) {
        const score::TuneNote& before = tune_.notes[i - 1];
        timed.rest = start - seconds_at(tune_, before.start + before.duration);
    }
    timed.stress = note.stress;
    if (note.string) timed.string = string_index(preset_, *note.string).value_or(-1);
    timed.finger = note.finger;
    for (int s = 0; s < strings(); ++s) timed.places.push_back(board_place(note.spelling, preset_, s));
    timed.has_fret = std::ranges::any_of(timed.places, [](const auto& place) { return place && !place->bare; });
    return timed;
}

const std::optional<BoardPlace>& Hand::on_board(std::size_t i, int string) const {
    return notes_[i].places[static_cast<std::size_t>(string)];
}

bool Hand::is_free(std::size_t i, int string, int finger) const {
    const Timed& note = notes_[i];
    return note.string.value_or(string) == string && note.finger.value_or(finger) == finger;
}

double Hand::place_stop(int place) const {
    return place <= preset_.frets ? fret_stop(preset_, place) : static_cast<double>(place);
}

double Hand::place_from_nut(int place, int string) const {
    return from_nut(preset_.strings[static_cast<std::size_t>(string)], place_stop(place));
}

double Hand::span(int place, int string) const {
    const double half = 0.5 * preset_.strings[static_cast<std::size_t>(string)].length;
    const double way = std::min(1.0, place_from_nut(place, string) / half);
    return preset_.player.hand_span * (1.0 - (1.0 - weights_.high_span) * way);
}

bool Hand::has_landmark(int place) const {
    if (place <= preset_.frets) return true;
    const int reach = preset_.guide_fret ? weights_.guide_reach : 0;
    return std::abs(place - octave) <= reach;
}

std::optional<double> Hand::finger_cost(const HandState& state, const BoardPlace& at) const {
    const double first = place_from_nut(state.place, state.string);
    const double from_first = at.from_nut - first;
    if (state.finger == 1) {
        const double off = at.stop - place_stop(state.place);
        if (std::abs(off) <= weights_.beside) return 0.0;
        const bool drawn_back = off < 0.0 && off >= -1.0 - weights_.beside;
        return drawn_back ? std::optional(weights_.reach_back) : std::nullopt;
    }
    const double span_here = span(state.place, state.string);
    const double open = weights_.finger_place[static_cast<std::size_t>(state.finger - 1)] * span_here;
    const double room = weights_.pad * (state.finger - 1);
    const double beyond = std::max(0.0, from_first - open) / span_here;
    if (beyond > weights_.stretch_limit || from_first < weights_.crowd_limit * room) return std::nullopt;
    const double within = std::max(0.0, weights_.close_share * open - from_first) / span_here;
    const double lacking = std::max(0.0, room - from_first) / weights_.pad;
    return weights_.stretch * beyond + weights_.squeeze * within + weights_.crowd * lacking;
}

double Hand::place_cost(std::size_t i, const HandState& state) const {
    const BoardPlace& at = *on_board(i, state.string);
    const double way = at.from_nut / preset_.strings[static_cast<std::size_t>(state.string)].length;
    const double thickness = strings() > 1 ? static_cast<double>(state.string) / (strings() - 1) : 0.0;
    double cost = way * (weights_.height + weights_.thick_string * thickness * way);
    if (at.bare && preset_.frets > 0) cost += weights_.bare + (notes_[i].has_fret ? weights_.bare_for_fret : 0.0);
    return cost + weights_.weak_note * weights_.weakness[static_cast<std::size_t>(state.finger)];
}

std::optional<double> Hand::note(std::size_t i, const HandState& state) const {
    const std::optional<BoardPlace>& at = on_board(i, state.string);
    if (!at || !is_free(i, state.string, state.finger) || (at->fret == 0) != (state.finger == 0)) return std::nullopt;
    if (state.finger == 0) return preset_.frets > 0 ? 0.0 : weights_.open_unfretted;
    if (state.place < 1) return std::nullopt;
    const std::optional<double> finger = finger_cost(state, *at);
    if (!finger) return std::nullopt;
    return *finger + place_cost(i, state);
}

double Hand::landmark_cost(int place) const { return place == 0 || has_landmark(place) ? 0.0 : weights_.no_landmark; }

std::optional<double> Hand::begin(const HandState& state) const {
    if (state.finger == 0 && state.place != 0) return std::nullopt;
    return landmark_cost(state.place);
}

bool Hand::reaches(std::size_t i, int string, int place) const {
    const std::optional<BoardPlace>& at = on_board(i, string);
    if (!at || place < 1) return false;
    for (int finger = 1; finger <= 4; ++finger)
        if (finger_cost({string, finger, place}, *at)) return true;
    return false;
}

double Hand::end(const HandState& state) const {
    return weights_.weak_end * weights_.weakness[static_cast<std::size_t>(state.finger)];
}

double Hand::crossing_cost(int from, int to) const {
    const int apart = std::abs(to - from);
    return apart == 0 ? 0.0 : weights_.next_string + weights_.passed_string * (apart - 1);
}

double Hand::shift_cost(std::size_t to_note, const HandState& from, const HandState& to) const {
    const Timed& arrived = notes_[to_note];
    const double left = notes_[to_note - 1].length;
    const double moved = std::abs(place_from_nut(to.place, to.string) - place_from_nut(from.place, to.string));
    double cost = weights_.shift + weights_.shift_span * moved / preset_.player.hand_span;
    if (arrived.stress == score::Stress::beat) cost += weights_.shift_on_beat;
    if (arrived.stress == score::Stress::offbeat) cost += weights_.shift_offbeat;
    cost += weights_.shift_hurried * std::max(0.0, 1.0 - (left + arrived.rest) / weights_.unhurried);
    if (from.finger == 0) cost *= weights_.open_share;
    if (arrived.rest >= weights_.least_rest) cost *= weights_.rest_share;
    if (from.finger == to.finger && from.string == to.string) cost *= weights_.guide_share;
    const auto& was = on_board(to_note - 1, from.string);
    const bool leaps = from.finger > 0 && was && preset_.frets > 0 && was->bare != on_board(to_note, to.string)->bare;
    return cost + end(from) + landmark_cost(to.place) + (leaps ? weights_.fret_to_bare : 0.0);
}

/// Within one hand place: what the fingers do to each other.
double Hand::step_cost(std::size_t to_note, const HandState& from, const HandState& to) const {
    const double was = on_board(to_note - 1, from.string)->from_nut;
    const double step = on_board(to_note, to.string)->from_nut - was;
    const bool same_string = from.string == to.string;
    const bool moves = std::abs(step) > same_spot;
    if (from.finger == to.finger) {
        if (same_string) return moves ? weights_.hop : 0.0;
        const bool neighbours = std::abs(from.string - to.string) == 1;
        return neighbours && !moves ? weights_.lie_across : weights_.hop;
    }
    if (!moves) return same_string ? weights_.hop : 0.0;
    const bool upwards = to.finger > from.finger;
    if (upwards != (step > 0.0)) return same_string ? weights_.crossed : 0.0;
    const auto [low, high] = std::minmax(from.finger, to.finger);
    const double span_here = span(to.place, to.string);
    const double apart = weights_.finger_place[static_cast<std::size_t>(high - 1)] -
                         weights_.finger_place[static_cast<std::size_t>(low - 1)];
    const double beyond = low == 1 ? 0.0 : std::max(0.0, std::abs(step) / span_here - apart);
    const double lacking = same_string && low > 1 ? std::max(0.0, (high - low) - std::abs(step) / weights_.pad) : 0.0;
    return weights_.stretch * beyond + weights_.crowd * lacking;
}

std::optional<double> Hand::move(std::size_t to_note, const HandState& from, const HandState& to) const {
    assert(to_note > 0 && to_note < notes_.size());
    const double crossing = crossing_cost(from.string, to.string);
    if (to.finger == 0) return to.place == from.place ? std::optional(crossing) : std::nullopt;
    if (from.place == 0) return crossing + landmark_cost(to.place);
    if (from.place != to.place) return crossing + shift_cost(to_note, from, to);
    return crossing + (from.finger == 0 ? 0.0 : step_cost(to_note, from, to));
}

}  // namespace sim::passage
