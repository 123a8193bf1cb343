// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/place_words.hpp"
#include "sim/report/passage_bow.hpp"
#include "sim/report/table.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <iterator>

namespace sim::report {
namespace {

using passage::FingeredNote;
using passage::Fingering;
using passage::HandPlace;

const PresetString& string_of(const AskedPassage& asked, int index) {
    return asked.preset.strings[static_cast<std::size_t>(index)];
}

std::string check_cell(const AskedPassage& asked, const passage::NoteAdvice& advice) {
    if (!advice.check) return "-";
    return advice.check->interval +
           (advice.check->interval == "unison" ? " with "
            : advice.check->note_is_above      ? " above "
                                               : " below ") +
           string_of(asked, advice.check->string).pitch;
}

std::string bars_words(const AskedPassage& asked, const HandPlace& place) {
    const auto spot = [&](std::size_t i) {
        const score::TuneNote& note = asked.tune.tune.notes[i];
        return "bar " + std::to_string(note.bar) + " " + spelling_name(note.spelling);
    };
    return place.first == place.last ? spot(place.first) : spot(place.first) + " to " + spot(place.last);
}

std::string hand_place_words(const AskedPassage& asked, const Fingering& fingering) {
    std::string words;
    for (std::size_t k = 0; k < fingering.hand_places.size(); ++k) {
        const HandPlace& place = fingering.hand_places[k];
        words += "  " + std::to_string(k + 1) + ": first finger " + passage::at_words(place.name) + " (" +
                 bars_words(asked, place) + ")";
        if (place.landmark.empty()) words += "; no landmark";
        if (!place.why.empty()) words += ": " + place.why;
        words += ".\n";
    }
    return words;
}

/// "2-1 3-2 | 1-1": string and finger of each note, hand places parted.
std::string short_words(const AskedPassage& asked, const Fingering& fingering) {
    std::string words;
    for (std::size_t i = 0; i < fingering.notes.size(); ++i) {
        const FingeredNote& note = fingering.notes[i];
        if (i > 0) words += note.hand_place != fingering.notes[i - 1].hand_place ? " | " : " ";
        words += string_of(asked, note.string).name + "-" + std::to_string(note.finger);
    }
    return words;
}

std::string other_words(const AskedPassage& asked, const std::vector<Fingering>& found) {
    constexpr std::size_t most_shown = 60;  // notes; more don't help the eye
    if (found.size() < 2) return "";
    std::string words = "Other ways (string-finger for each note, a line where the hand moves):\n";
    for (std::size_t k = 0; k < found.size(); ++k) {
        if (k == asked.chosen) continue;
        words += "  " + std::to_string(k + 1) + " (cost " + fixed_number(found[k].cost, 1) + " against " +
                 fixed_number(found[asked.chosen].cost, 1) + "): ";
        words += found[k].notes.size() <= most_shown ? short_words(asked, found[k])
                                                     : std::to_string(found[k].hand_places.size()) + " hand places";
        words += "\n";
    }
    return words;
}

std::vector<std::string> row_of(const AskedPassage& asked, const Fingering& fingering, std::size_t i,
                                const passage::NoteAdvice& advice) {
    const score::Tune& tune = asked.tune.tune;
    const score::TuneNote& note = tune.notes[i];
    const FingeredNote& fingered = fingering.notes[i];
    const double start = seconds_at(tune, note.start);
    return {std::to_string(note.bar),
            spelling_name(note.spelling),
            fixed_number(start, 2),
            fixed_number(seconds_at(tune, note.start + note.duration) - start, 2),
            string_of(asked, fingered.string).name,
            advice.stop,
            mm_cell(fingered.from_nut, 0),
            fingered.finger == 0 ? "open" : std::to_string(fingered.finger),
            fingered.hand_place < 0 ? "-" : std::to_string(fingered.hand_place + 1),
            mm_cell(advice.to_next, 0),
            fixed_cell(fingered.cents, 0),
            check_cell(asked, advice)};
}

/// Joins what stands over a note already.
void add_contact_words(std::vector<score::NoteMarks>& marks, const passage::Passage& bow) {
    const std::vector<std::string> words = contact_words(bow);
    for (std::size_t i = 0; i < marks.size(); ++i)
        if (!words[i].empty()) marks[i].words += (marks[i].words.empty() ? "" : "; ") + words[i];
}

}  // namespace

std::string passage_heading(const AskedPassage& asked) {
    const std::string& title = asked.tune.tune.title;
    return (title.empty() ? "" : title + ", ") + asked.preset.name;
}

std::string passage_table(const AskedPassage& asked, const std::vector<Fingering>& found, const BowedPassage* bowed) {
    const Fingering& fingering = found[asked.chosen];
    Table table({{"bar", ""},
                 {"note", "", true},
                 {"starts", "s"},
                 {"lasts", "s"},
                 {"string", ""},
                 {"stop", "", true},
                 {"from", "nut mm"},
                 {"finger", ""},
                 {"hand", "place"},
                 {"to next", "mm"},
                 {"off", "cents"},
                 {"sounds with", "open string", true}});
    const std::vector<passage::NoteAdvice> advice = note_advice(asked.tune.tune, asked.preset, fingering);
    for (std::size_t i = 0; i < advice.size(); ++i) table.add_row(row_of(asked, fingering, i, advice[i]));
    return passage_heading(asked) + "\n\n" + table.text() + (bowed == nullptr ? "" : "\n" + bow_table(asked, *bowed));
}

std::string passage_in_words(const AskedPassage& asked, const std::vector<Fingering>& found,
                             const BowedPassage* bowed) {
    const Fingering& fingering = found[asked.chosen];
    std::string words;
    if (!fingering.hand_places.empty()) words += "Hand places:\n" + hand_place_words(asked, fingering);
    words += other_words(asked, found);
    auto warnings = fingering_warnings(asked.tune.tune, asked.preset, fingering);
    if (bowed != nullptr) {
        words += played_in_words(asked.tune.tune, bowed->bow, bowed->played) + "\n";
        std::ranges::move(bow_warnings(asked.tune.tune, bowed->bow), std::back_inserter(warnings));
    }
    if (!warnings.empty()) words += "Beware:\n";
    for (const passage::Warning& warning : warnings) words += "  " + warning.text + ".\n";
    for (const std::string& remark : asked.tune.remarks) words += remark + "\n";
    return words +
           "Fingers 1 to 4 are planned, no thumb. What counts as easy is common practice; a player's hand may differ.";
}

std::vector<score::NoteMarks> passage_marks(const Fingering& fingering, const BowedPassage* bowed) {
    std::vector<score::NoteMarks> marks;
    for (const FingeredNote& note : fingering.notes)
        marks.push_back({.finger = note.finger, .string = note.string + 1, .words = ""});
    for (std::size_t k = 0; k < fingering.hand_places.size(); ++k) {
        const HandPlace& place = fingering.hand_places[k];
        const auto stopped =
            std::find_if(fingering.notes.begin() + static_cast<std::ptrdiff_t>(place.first), fingering.notes.end(),
                         [](const FingeredNote& note) { return note.finger > 0; });
        if (stopped != fingering.notes.end())
            marks[static_cast<std::size_t>(stopped - fingering.notes.begin())].words =
                "hand " + passage::at_words(place.name);
    }
    if (bowed != nullptr) add_contact_words(marks, bowed->bow);
    return marks;
}

}  // namespace sim::report
