// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/report/passage_report.hpp"
#include "sim/report/table.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

#include <algorithm>

namespace sim::report {
namespace {

using passage::BowedNote;
using passage::NoteKind;
using passage::PlayedNote;

std::string band_cell(const BandResult& band) {
    const auto& shown = band.band ? band.band : band.stretch;
    if (!shown) return "-";
    const std::string range = mm_cell(shown->near, 0) + " to " + mm_cell(shown->far, 0);
    return band.band ? range : "(" + range + ")";
}

std::string check_cell(const AskedPassage& asked, const passage::NoteAdvice& advice) {
    if (!advice.check) return "-";
    return advice.check->interval + ", string " +
           asked.preset.strings[static_cast<std::size_t>(advice.check->string)].name;
}

std::vector<std::string> finger_row(const AskedPassage& asked, const BowedPassage& bowed, std::size_t i) {
    const score::TuneNote& written = asked.read.tune.notes[i];
    const passage::FingeredNote& note = asked.fingerings.front().notes[i];
    return {std::to_string(i + 1),
            std::to_string(written.bar),
            spelling_name(written.spelling),
            fixed_number(bowed.bow.notes[i].start, 2),
            fixed_number(bowed.bow.notes[i].duration, 2),
            written.dynamic.empty() ? "-" : written.dynamic,
            asked.preset.strings[static_cast<std::size_t>(note.string)].name,
            asked.advice[i].stop,
            mm_cell(note.from_nut, 0),
            std::to_string(note.finger),
            note.hand_place < 0 ? "-" : std::to_string(note.hand_place + 1),
            mm_cell(asked.advice[i].to_next, 0),
            fixed_number(note.cents, 0),
            check_cell(asked, asked.advice[i])};
}

std::string heard_cell(const PlayedNote& played) {
    if (!played.bowed) return "no bow there";
    std::string words(motion_name(played.verdict.motion));
    std::ranges::replace(words, '_', ' ');
    return words;
}

std::vector<std::string> bow_row(const AskedPassage& asked, const BowedPassage& bowed, std::size_t i) {
    const BowedNote& note = bowed.bow.notes[i];
    const NoteKind& kind = kind_of(bowed.bow, note);
    const PlayedNote& follows = bowed.played.follows[i];
    const PlayedNote& behind = bowed.played.left_behind[i];
    return {std::to_string(i + 1),
            spelling_name(asked.read.tune.notes[i].spelling),
            mm_cell(note.contact, 0),
            mm_cell(kind.band.best, 0),
            band_cell(kind.band),
            percent_cell(note.security.security),
            newtons_cell(note.force),
            fixed_number(kind.player.speed, 2),
            heard_cell(follows),
            fixed_cell(follows.cents, 0),
            percent_cell(note.left_behind.security),
            heard_cell(behind),
            fixed_cell(behind.cents, 0)};
}

std::string finger_table(const AskedPassage& asked, const BowedPassage& bowed) {
    Table table({{"", ""},
                 {"bar", ""},
                 {"note", "", true},
                 {"at", "s"},
                 {"lasts", "s"},
                 {"loud", "", true},
                 {"string", "", true},
                 {"stop", "", true},
                 {"from", "nut mm"},
                 {"finger", ""},
                 {"hand", "place"},
                 {"to next", "mm"},
                 {"off", "cents"},
                 {"checked by", "open string", true}});
    for (std::size_t i = 0; i < bowed.bow.notes.size(); ++i) table.add_row(finger_row(asked, bowed, i));
    return table.text();
}

std::string bow_table(const AskedPassage& asked, const BowedPassage& bowed) {
    Table table({{"", ""},
                 {"note", "", true},
                 {"bow", "mm"},
                 {"best", "mm"},
                 {"band", "mm", true},
                 {"secure", "%"},
                 {"force", "N"},
                 {"speed", "m/s"},
                 {"following", "is", true},
                 {"off", "cents"},
                 {"behind", "%"},
                 {"left behind", "is", true},
                 {"off", "cents"}});
    for (std::size_t i = 0; i < bowed.bow.notes.size(); ++i) table.add_row(bow_row(asked, bowed, i));
    return table.text();
}

std::string hand_places_words(const passage::Fingering& fingering) {
    std::string words;
    for (std::size_t k = 0; k < fingering.hand_places.size(); ++k) {
        const passage::HandPlace& place = fingering.hand_places[k];
        words += "hand place " + std::to_string(k + 1) + ", " + place.name + ": notes " +
                 std::to_string(place.first + 1) + " to " + std::to_string(place.last + 1);
        words += (place.why.empty() ? "" : "; " + place.why) + "\n";
    }
    return words;
}

}  // namespace

std::string passage_heading(const AskedPassage& asked) {
    const std::string& title = asked.read.tune.title;
    return (title.empty() ? std::string("passage") : title) + ", on " + asked.run.preset.name;
}

std::string passage_table(const AskedPassage& asked, const BowedPassage& bowed) {
    return passage_heading(asked) + "; " + player_line(asked.preset.player) + " at mf\n\n" +
           finger_table(asked, bowed) +
           "\nthe bow, mm from the bridge (in brackets: the most secure stretch, no band)\n\n" +
           bow_table(asked, bowed);
}

std::string passage_words(const AskedPassage& asked, const BowedPassage& bowed) {
    std::string words =
        hand_places_words(asked.fingerings.front()) + "\n" + played_in_words(asked.read.tune, bowed.bow, bowed.played);
    if (!asked.warnings.empty()) words += "\n";
    for (const passage::Warning& warning : asked.warnings) words += "\n- " + warning.text;
    for (const std::string& remark : asked.read.remarks) words += "\n" + remark;
    return words;
}

}  // namespace sim::report
