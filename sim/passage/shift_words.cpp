// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/shift_words.hpp"

#include "sim/passage/place_words.hpp"

namespace sim::passage {
namespace {

/// A way, and the step of it that is told.
struct Told {
    const score::Tune& tune;
    const Preset& preset;
    const Hand& hand;
    const std::vector<HandState>& states;
    const Shift& shift;

    const HandState& before() const { return states[shift.first - 1]; }
    bool is_far(std::size_t i) const {
        return states[i].finger > 0 && !hand.reaches(i, states[i].string, before().place);
    }
    bool is_above(std::size_t i) const {
        return hand.on_board(i, states[i].string)->from_nut > hand.place_from_nut(before().place, states[i].string);
    }
    std::string from() const { return "what the hand reaches from " + hand_words(preset, hand, before()); }
    std::string side(std::size_t i) const { return is_above(i) ? " above " : " below "; }
};

/// How many notes from the first on lie out of reach on the same side.
std::size_t far_notes(const Told& told) {
    std::size_t count = 0;
    const bool above = told.is_above(told.shift.first);
    for (std::size_t i = told.shift.first; i <= told.shift.last; ++i, ++count)
        if (!told.is_far(i) || told.is_above(i) != above) break;
    return count;
}

std::string main_reason(const Told& told) {
    const std::size_t first = told.shift.first;
    const std::size_t count = told.is_far(first) ? far_notes(told) : 0;
    if (count == 1) return "the next note lies" + told.side(first) + told.from();
    if (count > 1) return "the next " + count_words(count) + " notes lie" + told.side(first) + told.from();
    for (std::size_t i = first; i <= told.shift.last; ++i)
        if (told.is_far(i)) return note_words(told.tune, i) + " lies" + told.side(i) + told.from();
    return "within reach of " + hand_words(told.preset, told.hand, told.before()) +
           " too, but from here the fingers lie better";
}

/// What makes it easier, if anything.
std::string help(const Told& told) {
    const HandState& from = told.before();
    const HandState& to = told.states[told.shift.first];
    if (from.finger == 0) return "; the hand moves while the open string sounds";
    if (from.finger == to.finger && from.string == to.string)
        return "; finger " + std::to_string(to.finger) + " stays on the string as a guide";
    return "";
}

}  // namespace

std::string shift_words(const score::Tune& tune, const Preset& preset, const Hand& hand,
                        const std::vector<HandState>& states, const Shift& shift) {
    const Told told{tune, preset, hand, states, shift};
    return main_reason(told) + help(told);
}

}  // namespace sim::passage
