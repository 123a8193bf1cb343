// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/change_tune.hpp"

#include "analysis/errors.hpp"
#include "sim/preset_reader.hpp"
#include "sim/score/numbers.hpp"

#include <sstream>

namespace sim::score {
namespace {

/// The note of a place such as "2.1".
TuneNote& note_at(Tune& tune, const std::string& place, const std::string& where) {
    const std::size_t dot = place.find('.');
    const auto bar = whole_number_in(place.substr(0, dot));
    const auto number = dot == std::string::npos ? std::nullopt : whole_number_in(place.substr(dot + 1));
    if (!bar || !number)
        throw analysis::InputError(where,
                                   "\"" + one_line(place) + "\" must be BAR.NOTE, as 2.1 for the first note of bar 2");
    int count = 0;
    for (TuneNote& note : tune.notes)
        if (note.bar == *bar && ++count == *number) return note;
    throw analysis::InputError(where, "bar " + std::to_string(*bar) + " has " + std::to_string(count) +
                                          " notes; there is no note " + std::to_string(*number));
}

void set_mark(TuneNote& note, const std::string& mark, const std::string& where) {
    const std::size_t equals = mark.find('=');
    const std::string key = mark.substr(0, equals);
    const std::string value = equals == std::string::npos ? "" : mark.substr(equals + 1);
    const auto finger = whole_number_in(value);
    if (key == "string" && !value.empty()) {
        note.string = value;
    } else if (key == "finger" && finger && *finger >= 0 && *finger <= 4) {
        note.finger = finger;
    } else {
        throw analysis::InputError(where, "\"" + one_line(mark) + "\" must be string=NAME or finger=0 to 4");
    }
}

}  // namespace

Tune at_tempo(Tune tune, double quarters_a_minute) {
    tune.tempos = {{0.0, quarters_a_minute}};
    return tune;
}

Tune with_fingers(Tune tune, const std::string& fixed, const std::string& where) {
    std::istringstream words(fixed);
    std::string word;
    while (words >> word) {
        std::istringstream parts(word);
        std::string part;
        std::getline(parts, part, ',');
        TuneNote& note = note_at(tune, part, where);
        if (parts.eof())
            throw analysis::InputError(where, "\"" + one_line(word) + "\" lacks string=NAME or finger=0 to 4");
        while (std::getline(parts, part, ',')) set_mark(note, part, where);
    }
    return tune;
}

}  // namespace sim::score
