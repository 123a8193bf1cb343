// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/fingering.hpp"

#include "sim/passage/hand_search.hpp"
#include "sim/passage/place_words.hpp"
#include "sim/passage/playable.hpp"
#include "sim/passage/shift_words.hpp"

#include <algorithm>
#include <cassert>

namespace sim::passage {
namespace {

/// A way through the tune, to be told.
struct Way {
    const score::Tune& tune;
    const Preset& preset;
    const Hand& hand;
    const std::vector<HandState>& states;
};

HandPlace hand_place(const Way& way, const Shift& notes, bool is_first) {
    const HandState& state = way.states[notes.first];
    return {.stop = way.hand.place_stop(state.place),
            .from_nut = way.hand.place_from_nut(state.place, state.string),
            .first = notes.first,
            .last = notes.last,
            .name = hand_words(way.preset, way.hand, state),
            .landmark = landmark_words(way.preset, way.hand, state.place),
            .why = is_first ? "" : shift_words(way.tune, way.preset, way.hand, way.states, notes)};
}

FingeredNote fingered_note(const Way& way, std::size_t i, int hand_place) {
    const HandState& state = way.states[i];
    const BoardPlace& at = *way.hand.on_board(i, state.string);
    return {.string = state.string,
            .stop = at.stop,
            .finger = state.finger,
            .hand_place = hand_place,
            .from_nut = at.from_nut,
            .pitch = at.pitch,
            .cents = at.cents};
}

Fingering fingering_of(const Way& way, double cost) {
    Fingering fingering{.notes = {}, .hand_places = {}, .cost = cost};
    for (std::size_t i = 0; i < way.states.size();) {
        std::size_t last = i;
        const int place = way.states[i].place;
        while (last + 1 < way.states.size() && way.states[last + 1].place == place) ++last;
        if (place > 0) fingering.hand_places.push_back(hand_place(way, {i, last}, fingering.hand_places.empty()));
        const int index = static_cast<int>(fingering.hand_places.size()) - 1;
        for (; i <= last; ++i) fingering.notes.push_back(fingered_note(way, i, index));
    }
    return fingering;
}

/// On how many notes another way must differ to be worth telling.
int notes_worth_telling(std::size_t notes) {
    return std::min(static_cast<int>(notes), std::clamp(static_cast<int>(notes / 10), 2, 8));
}

}  // namespace

std::vector<Fingering> find_fingerings(const score::Tune& tune, const Preset& preset, const FingeringPlan& plan) {
    assert(!tune.notes.empty() && plan.alternatives >= 1);
    const Hand hand(tune, preset, plan.weights);
    require_playable(tune, preset, hand);
    std::vector<Fingering> found;
    for (const HandWay& way : best_ways(hand, plan.alternatives, notes_worth_telling(tune.notes.size())))
        found.push_back(fingering_of({tune, preset, hand, way.states}, way.cost));
    assert(!found.empty());
    return found;
}

}  // namespace sim::passage
