// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/passage_bow.hpp"
#include "sim/report/table.hpp"
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
            spelling_name(asked.tune.tune.notes[i].spelling),
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

}  // namespace

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
    return "the bow, mm from the bridge (in brackets: the most secure stretch where there is no band)\n\n" +
           table.text();
}

}  // namespace sim::report
