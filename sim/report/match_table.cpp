// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/preset_reader.hpp"
#include "sim/report/analyse_report.hpp"
#include "sim/report/match_report.hpp"
#include "sim/report/table.hpp"
#include "sim/tempered_pitch.hpp"
#include "sim/text.hpp"

#include <algorithm>

namespace sim::report {
namespace {

using analysis::mm_from_metres;
using match::BandPlace;
using match::Match;
using match::NoteMatch;
using match::StringMatch;

constexpr double shown_share = 0.05;  // strings less likely get no row

std::string from_to(double from, double to, int decimals) {
    return fixed_number(from, decimals) + " to " + fixed_number(to, decimals);
}

/// Where there is no band, the best place stands in for it.
std::string band_cell(const NoteMatch& note) {
    switch (note.in_band) {
        case BandPlace::inside:
            return "inside";
        case BandPlace::partly:
            return "partly";
        case BandPlace::outside:
            return "outside";
        case BandPlace::no_band:
            return note.band->best ? "none; best at " + fixed_number(mm_from_metres(*note.band->best), 0) + " mm"
                                   : "none";
        case BandPlace::unknown:
            break;
    }
    return "-";
}

std::string stop_cell(const StringMatch& string) {
    return string.place.stop == 0.0 ? "open" : short_number(string.place.stop);
}

std::vector<std::string> region_cells(const StringMatch& string, const Player& player) {
    if (!string.region) return {"-", "-", "-", "-", "-"};
    const match::StrokeRegion& region = *string.region;
    const double length = string.place.note.string.length;
    const auto both = [&](double unit, int decimals) {
        return from_to(region.contact.low / unit, region.contact.high / unit, decimals);
    };
    return {both(analysis::metres_from_mm(1.0), 0), both(length, 3), both(player.finger_width, 1),
            from_to(region.force.low, region.force.high, 2),
            fixed_number(mm_from_metres(region.best_contact), 0) + " at " + fixed_number(region.best_force, 2)};
}

void add_rows(Table& table, const AskedMatch& asked, const Match& match, std::size_t i) {
    const NoteMatch& note = match.notes[i];
    const analysis::RecordedNote& heard = match.recording.notes[i];
    const std::string pitch = heard.tone ? nearest_pitch(heard.tone->hz, tuning_of(asked)).name : "no pitch";
    const std::vector<std::string> when{std::to_string(i + 1), fixed_number(heard.span.start, 2),
                                        fixed_number(heard.span.end, 2), pitch};
    const auto add = [&](std::vector<std::string> first, const std::vector<std::string>& rest) {
        first.insert(first.end(), rest.begin(), rest.end());
        table.add_row(std::move(first));
    };
    if (!note.abstains.empty()) {
        add(when, {"abstains", "-", "-", "-", "-", "-", "-", "-", "-"});
        return;
    }
    for (const StringMatch& string : shown_strings(note)) {
        const bool first = &string == &note.strings.front();
        std::vector<std::string> cells{string.place.string, stop_cell(string), percent_cell(string.share)};
        const std::vector<std::string> region = region_cells(string, match.player);
        cells.insert(cells.end(), region.begin(), region.end());
        cells.push_back(first ? band_cell(note) : "-");
        add(first ? when : std::vector<std::string>{"", "", "", ""}, cells);
    }
}

std::string doubts_in_words(const Match& match) {
    std::string words;
    for (std::size_t i = 0; i < match.notes.size(); ++i)
        if (!match.notes[i].abstains.empty())
            words += "Note " + std::to_string(i + 1) + " abstains: " + match.notes[i].abstains + ".\n";
    return words;
}

/// "0.1 to 0.4 N at 0.2 m/s".
std::string strokes_held_against(const Player& player) {
    return short_number(player.force_low) + " to " + short_number(player.force_high) + " N at " +
           short_number(player.speed) + " m/s";
}

bool says(const NoteMatch& note) { return note.abstains.empty(); }

}  // namespace

bool says_something(const Match& match) { return std::ranges::any_of(match.notes, says); }

std::size_t first_told(const Match& match) {
    const auto first = std::ranges::find_if(match.notes, says);
    return first == match.notes.end() ? 0 : static_cast<std::size_t>(first - match.notes.begin());
}

std::span<const StringMatch> shown_strings(const NoteMatch& note) {
    std::size_t count = std::min<std::size_t>(1, note.strings.size());
    while (count < note.strings.size() && note.strings[count].share >= shown_share) ++count;
    return {note.strings.data(), count};
}

std::string match_note_name(const AskedMatch& asked, const Match& match, std::size_t note) {
    const analysis::RecordedNote& heard = match.recording.notes[note];
    std::string name = "note " + std::to_string(note + 1);
    if (heard.tone) name += ", " + nearest_pitch(heard.tone->hz, tuning_of(asked)).name;
    if (match.notes[note].strings.empty()) return name;
    const StringMatch& string = match.notes[note].strings.front();
    return name + " on string " + string.place.string + ", " +
           (string.place.stop == 0.0 ? "open" : "stop " + short_number(string.place.stop));
}

std::string match_table(const AskedMatch& asked, const Match& match) {
    const std::string heading =
        one_line(asked.file) + " against " + asked.run.preset.name + ": " + recording_line(match.recording) + "\n";
    if (match.notes.empty()) return heading;
    Table table({{"note", ""},
                 {"from", "s"},
                 {"to", "s"},
                 {"pitch", "", true},
                 {"string", "", true},
                 {"stop", ""},
                 {"likely", "%"},
                 {"contact point", "mm"},
                 {"of the string", ""},
                 {"", "fingers"},
                 {"force", "N"},
                 {"likeliest", "mm at N"},
                 {"contact band", "", true}});
    for (std::size_t i = 0; i < match.notes.size(); ++i) add_rows(table, asked, match, i);
    return heading + "\n" + table.text();
}

std::string match_in_words(const AskedMatch& asked, const Match& match) {
    std::string words;
    for (const std::string& warning : match.warnings) words += warning + "\n";
    words += doubts_in_words(match);
    if (says_something(match)) {
        words += "Contact points and forces are regions that hold " + percent_cell(asked.region_share) +
                 " % of the likelihood, of strokes of " + strokes_held_against(match.player) +
                 "; every place and force that speaks counted alike before. At another bow speed the forces go along "
                 "with it.\n";
        words +=
            "What tells is how the partials rise and fall, held against simulated strokes; what your instrument's "
            "body, the room and the microphone add is unknown and allowed for. Where strings, rosin or bow speed are "
            "unlike the preset's, trust the regions less. A stroke in another motion than Helmholtz's may be taken for "
            "one that speaks elsewhere.\n";
        const bool unsure = std::ranges::any_of(
            match.notes, [](const NoteMatch& note) { return note.abstains.empty() && !note.string_told; });
        if (unsure) words += "Where the string is not told by the sound, name it by --string.\n";
    }
    if (!words.empty()) words.pop_back();
    return words;
}

}  // namespace sim::report
