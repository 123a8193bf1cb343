// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/lesson_parts.hpp"

#include "analysis/audio_file.hpp"
#include "analysis/units.hpp"
#include "sim/report/html.hpp"
#include "sim/report/lesson_words.hpp"
#include "sim/report/table.hpp"
#include "sim/report/tone_values.hpp"
#include "sim/text.hpp"

namespace sim::report {
namespace {

/// A sound that plays on its own controls, or words where there is none.
std::string player(const analysis::Signal& sound, const std::string& name) {
    if (sound.samples.empty()) return text_element("p", "No sound: no bow can stand there.", {{"class", "quiet"}});
    return element("audio", escaped("This browser plays no FLAC sounds."),
                   {{"controls", "controls"},
                    {"preload", "metadata"},
                    {"aria-label", name},
                    {"src", data_uri("audio/flac", analysis::flac_bytes(sound))}}) +
           "\n";
}

std::string take(const NamedSound& sound) {
    return element("div", text_element("h4", sound.name) + "\n" + player(*sound.sound, sound.label),
                   {{"class", "take"}}) +
           "\n";
}

std::string cents_cell(const StrokeResult& stroke, const Note& note) {
    const auto cents = pitch_cents(stroke, note);
    if (!cents) return "none clear";
    const std::string number = fixed_number(*cents, 0);
    return number == "0" || number == "-0" ? "0" : (*cents > 0.0 ? "+" : "") + number;
}

/// dB against the bow that follows.
std::string level_cell(const StrokeResult& stroke, const StrokeResult& follows) {
    const auto level = level_db(stroke);
    const auto other = level_db(follows);
    return level && other ? fixed_cell(*level - *other, 1) : "-";
}

std::vector<std::string> column_of(const ClimbPlace& place, const ClimbStop& stop, const Player& player) {
    std::vector<std::string> cells{mm_cell(place.contact_point, 0),
                                   fixed_cell(place.contact_point / player.finger_width, 1)};
    if (!place.stroke || !stop.follows || !stop.follows->stroke) {
        cells.insert(cells.end(), {"-", "-", "-", "-"});
    } else {
        cells.push_back(motion_words(place.stroke->verdict.motion));
        cells.push_back(cents_cell(*place.stroke, stop.note));
        cells.push_back(level_cell(*place.stroke, *stop.follows->stroke));
        cells.push_back(fixed_cell(brightness_f0(*place.stroke), 1));
    }
    cells.push_back(percent_cell(place.security.security));
    return cells;
}

PageTable measures(const ClimbStop& stop, const Player& player, const std::string& name) {
    const std::vector<std::string> heads{"Bow from the bridge, mm",
                                         "the same in finger-widths",
                                         "The string",
                                         "Pitch, cents from the note",
                                         "Level, dB against the bow that follows",
                                         "Brightness, times the fundamental",
                                         "Clean strokes of 100"};
    const std::vector<std::string> left = column_of(stop.left_behind, stop, player);
    const std::vector<std::string> right =
        stop.follows ? column_of(*stop.follows, stop, player) : std::vector<std::string>(heads.size(), "-");
    PageTable table{.caption = "Measured: " + name, .columns = {"", "left behind", "follows"}, .rows = {}};
    for (std::size_t i = 0; i < heads.size(); ++i) table.rows.push_back({heads[i], left[i], right[i]});
    return table;
}

std::string card(const HeardStop& heard, const AskedLesson& asked, const Lesson& lesson) {
    const ClimbStop& stop = lesson.climb.stops[heard.index];
    const std::string name = stop_heading(stop.note.stop) + ", " + note_name(stop, asked);
    const std::string pair = sound_pair({"Bow left behind", name + ", bow left behind", &heard.left_behind},
                                        {"Bow follows", name + ", bow follows", &heard.follows});
    return element("article",
                   "\n" + text_element("h3", name) + "\n" + text_element("p", listen_for(stop)) + "\n" + pair +
                       table_element(measures(stop, lesson.climb.player, name)),
                   {{"class", "card"}}) +
           "\n";
}

std::string whole_climb(const Lesson& lesson) {
    const std::vector<ClimbStop>& stops = lesson.climb.stops;
    if (stops.size() < 2) return "";
    const std::string from_to = "from " + the_stop(stops.front().note.stop) + " to " + the_stop(stops.back().note.stop);
    const std::string pair =
        sound_pair({"Bow left behind", "The whole climb, bow left behind", &lesson.whole_left_behind},
                   {"Bow follows", "The whole climb, bow follows", &lesson.whole_follows});
    return element("article",
                   "\n" + text_element("h3", "The whole climb, " + from_to) + "\n" +
                       text_element("p",
                                    "First the bow stays where it suited the lowest stop, then it follows. Where no "
                                    "bow can stand there is silence.") +
                       "\n" + pair,
                   {{"class", "card on-screen"}}) +
           "\n";
}

}  // namespace

std::string sound_pair(const NamedSound& left_behind, const NamedSound& follows) {
    return element("div", "\n" + take(left_behind) + take(follows), {{"class", "pair"}}) + "\n";
}

std::string hearing_part(const AskedLesson& asked, const Lesson& lesson) {
    std::string inside = text_element("p", listening_caution().text, {{"class", "caution"}}) + "\n";
    inside +=
        text_element("p",
                     "Every pair is the same note, the same force and the same bow speed; only the place of the bow "
                     "differs. All sounds share one volume, so a weaker one is weaker on the string too. They are "
                     "simulated, not recorded. 100 cents are a semitone.") +
        "\n";
    inside += text_element("p", "The sounds play from this page on a screen; on paper only the measures remain.",
                           {{"class", "on-paper"}}) +
              "\n";
    std::string cards = "\n";
    for (const HeardStop& heard : lesson.heard) cards += card(heard, asked, lesson);
    inside += element("div", cards, {{"class", "cards"}}) + "\n";
    return section("hear", "Hear it", inside + whole_climb(lesson));
}

}  // namespace sim::report
