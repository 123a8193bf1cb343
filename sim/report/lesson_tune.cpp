// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/lesson_parts.hpp"

#include "sim/passage/advice.hpp"
#include "sim/passage/bow_words.hpp"
#include "sim/report/html.hpp"
#include "sim/report/lesson_words.hpp"
#include "sim/report/path_drawing.hpp"
#include "sim/report/table.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <iterator>
#include <sstream>

namespace sim::report {
namespace {

using passage::PlayedNote;

std::string heard_cell(const PlayedNote& played) {
    return played.bowed ? motion_words(played.verdict.motion) : "no bow can stand there";
}

std::string note_label(const LessonTune& tune, std::size_t i) {
    return spelling_name(tune.read.tune.notes[i].spelling);
}

PathDrawing path_drawing(const LessonTune& tune) {
    const passage::Passage& bow = tune.bow;
    PathDrawing drawing;
    drawing.title = "The way of the bow through the tune";
    drawing.description =
        "Over time, how far the bow is from the bridge: the band of each note, the bow that follows as a line, the bow "
        "left behind dashed. The table below holds the same places in millimetres.";
    for (std::size_t i = 0; i < bow.notes.size(); ++i) {
        const passage::BowedNote& note = bow.notes[i];
        const BandResult& found = kind_of(bow, note).band;
        const std::optional<Band>& band = found.band ? found.band : found.stretch;
        PathNote shown;
        shown.label = note_label(tune, i);
        shown.start = note.start;
        shown.duration = note.duration;
        if (band) {
            shown.near = band->near;
            shown.far = band->far;
        }
        shown.is_band = found.band.has_value();
        shown.failed_behind = !sounds(tune.played.left_behind[i]);
        drawing.notes.push_back(shown);
        drawing.path.emplace_back(note.start, note.from);
        drawing.path.emplace_back(note.start + note.duration, note.to);
    }
    drawing.left_behind = bow.left_behind;
    return drawing;
}

std::string path_figure(const LessonTune& tune) {
    PathDrawing drawing = path_drawing(tune);
    std::string text;
    for (const bool is_wide : {true, false}) {
        drawing.width = is_wide ? 760.0 : 360.0;
        drawing.seconds_a_row = is_wide ? 16.0 : 8.0;
        drawing.id = is_wide ? "path-wide" : "path-narrow";
        text += element("div", path_svg(drawing), {{"class", is_wide ? "for-wide" : "for-narrow"}}) + "\n";
    }
    return element("figure",
                   "\n" + text +
                       text_element("figcaption",
                                    "The way of the bow, mm from the bridge (at the foot) over seconds: the "
                                    "line follows, the dashed line is the bow left behind, crossed where its "
                                    "note is not clean. Boxes: contact bands; dashed boxes: no band, but nearly "
                                    "as good as it can be.") +
                       "\n") +
           "\n";
}

PageTable notes_table(const AskedLesson& asked, const LessonTune& tune) {
    PageTable table{.caption = "Note by note: finger and bow",
                    .columns = {"", "Bar", "Note", "String", "Stop", "Finger", "Hand place", "Bow from the bridge, mm",
                                "Clean strokes of 100", "Following, it", "Left behind, it"},
                    .rows = {}};
    const passage::Fingering& fingering = tune.fingering;
    const auto advice = note_advice(tune.read.tune, asked.preset, fingering);
    for (std::size_t i = 0; i < fingering.notes.size(); ++i) {
        const passage::FingeredNote& note = fingering.notes[i];
        const passage::BowedNote& bowed = tune.bow.notes[i];
        table.rows.push_back({std::to_string(i + 1), std::to_string(tune.read.tune.notes[i].bar), note_label(tune, i),
                              asked.preset.strings[static_cast<std::size_t>(note.string)].name, advice[i].stop,
                              std::to_string(note.finger),
                              note.hand_place < 0 ? "-" : std::to_string(note.hand_place + 1),
                              mm_cell(bowed.contact, 0), percent_cell(bowed.security.security),
                              heard_cell(tune.played.follows[i]), heard_cell(tune.played.left_behind[i])});
    }
    return table;
}

std::string hand_places(const LessonTune& tune) {
    std::string items = "\n";
    for (const passage::HandPlace& place : tune.fingering.hand_places)
        items += text_element("li", place.name + ": notes " + std::to_string(place.first + 1) + " to " +
                                        std::to_string(place.last + 1) + (place.why.empty() ? "" : "; " + place.why)) +
                 "\n";
    return text_element("h3", "Hand places") + "\n" + element("ol", items) + "\n";
}

std::string sentence(const std::string& text) { return text.ends_with('.') ? text : text + "."; }

std::string warnings_list(const AskedLesson& asked, const LessonTune& tune) {
    auto warnings = fingering_warnings(tune.read.tune, asked.preset, tune.fingering);
    std::ranges::move(bow_warnings(tune.read.tune, tune.bow), std::back_inserter(warnings));
    if (warnings.empty()) return "";
    std::string items = "\n";
    for (const passage::Warning& warning : warnings) items += text_element("li", sentence(warning.text)) + "\n";
    return text_element("h3", "Look out for") + "\n" + element("ul", items) + "\n";
}

/// A paragraph for each line.
std::string paragraphs(const std::string& text) {
    std::istringstream lines(text);
    std::string result;
    for (std::string line; std::getline(lines, line);)
        if (!line.empty()) result += text_element("p", line) + "\n";
    return result;
}

}  // namespace

std::string tune_part(const AskedLesson& asked, const LessonTune& tune) {
    const std::string& title = tune.read.tune.title;
    const std::string pair = sound_pair({"Bow left behind", "The tune, bow left behind", &tune.takes.left_behind},
                                        {"Bow follows", "The tune, bow follows", &tune.takes.follows});
    return section("tune", title.empty() ? "The tune" : "The tune: " + title,
                   pair + paragraphs(played_in_words(tune.read.tune, tune.bow, tune.played)) + path_figure(tune) +
                       hand_places(tune) + table_element(notes_table(asked, tune)) + warnings_list(asked, tune));
}

}  // namespace sim::report
