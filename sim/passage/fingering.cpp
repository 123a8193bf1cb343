// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/fingering.hpp"

#include "analysis/errors.hpp"
#include "sim/passage/board.hpp"

namespace sim::passage {
namespace {

FingeredNote on_some_string(const score::TuneNote& note, const Preset& preset) {
    for (std::size_t s = 0; s < preset.strings.size(); ++s) {
        const auto place = board_place(note.spelling, preset, static_cast<int>(s));
        if (!place || (note.string && preset.strings[s].name != *note.string)) continue;
        return {.string = static_cast<int>(s),
                .stop = place->stop,
                .finger = place->fret == 0 ? 0 : note.finger.value_or(1),
                .hand_place = -1,
                .from_nut = place->from_nut,
                .pitch = place->pitch,
                .cents = place->cents};
    }
    throw analysis::InputError("bar " + std::to_string(note.bar) + ", " + spelling_name(note.spelling),
                               "lies on no string of the " + preset.name);
}

}  // namespace

std::vector<Fingering> find_fingerings(const score::Tune& tune, const Preset& preset, const FingeringPlan&) {
    Fingering found;
    for (const score::TuneNote& note : tune.notes) {
        found.notes.push_back(on_some_string(note, preset));
        FingeredNote& last = found.notes.back();
        if (last.finger == 0) continue;
        const std::size_t i = found.notes.size() - 1;
        if (found.hand_places.empty() || found.hand_places.back().stop != last.stop)
            found.hand_places.push_back({.stop = last.stop, .from_nut = last.from_nut, .first = i, .last = i});
        found.hand_places.back().last = i;
        last.hand_place = static_cast<int>(found.hand_places.size()) - 1;
    }
    return {found};
}

}  // namespace sim::passage
