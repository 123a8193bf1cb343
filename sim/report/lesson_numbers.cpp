// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/lesson_parts.hpp"

#include "analysis/units.hpp"
#include "sim/report/html.hpp"
#include "sim/report/lesson_words.hpp"
#include "sim/report/table.hpp"
#include "sim/text.hpp"

namespace sim::report {
namespace {

constexpr double grams_a_newton = 1000.0 / 9.80665;

std::string mm(double metres) { return short_number(analysis::mm_from_metres(metres)) + " mm"; }

/// The band; in brackets where there is none, the stretch that does nearly as well.
std::string span_cell(const BandResult& result) {
    const std::optional<Band>& shown = result.band ? result.band : result.stretch;
    if (!shown) return "-";
    const std::string span = mm_cell(shown->near, 0) + " to " + mm_cell(shown->far, 0);
    return result.band ? span : "(" + span + ")";
}

std::string force_words(const Player& player) {
    return short_number(player.force_low) + " to " + short_number(player.force_high) + " N (the weight of " +
           fixed_number(player.force_low * grams_a_newton, 0) + " to " +
           fixed_number(player.force_high * grams_a_newton, 0) + " g)";
}

std::string player_list(const AskedLesson& asked) {
    const Player& player = asked.preset.player;
    const std::vector<std::pair<std::string, std::string>> lines{
        {"Bow force", force_words(player)},
        {"Bow speed", short_number(100.0 * player.speed) + " cm/s, reached in " +
                          short_number(analysis::ms_from_seconds(player.rise)) + " ms"},
        {"The place strays by up to", mm(player.wander) + " either way"},
        {"Finger-width", mm(player.finger_width)},
        {"Width of the hair", mm(asked.preset.hair_width)},
        {"Sounding string, open", mm(asked.string.length)},
    };
    std::string items;
    for (const auto& [name, value] : lines)
        items += element("div", text_element("dt", name) + text_element("dd", value)) + "\n";
    return element("dl", "\n" + items) + "\n";
}

std::vector<std::string> row_of(const ClimbStop& stop, const AskedLesson& asked) {
    const auto best = stop.band.best;
    const auto over = [&](double of) { return best ? std::optional(*best / of) : std::nullopt; };
    return {short_number(stop.note.stop),
            note_name(stop, asked),
            mm_cell(stop.from_nut, 0),
            mm_cell(stop.next_semitone, 1),
            mm_cell(best, 0),
            fixed_cell(over(asked.preset.player.finger_width), 1),
            best ? "1/" + fixed_number(stop.note.string.length / *best, 0) : "-",
            span_cell(stop.band),
            percent_cell(stop.band.at_best.security),
            percent_cell(stop.left_behind.security.security)};
}

PageTable stops_table(const AskedLesson& asked, const Lesson& lesson) {
    PageTable table{
        .caption = "Stop by stop: where the finger is and where the bow belongs",
        .columns = {"Stop, semitones", "Note", "Finger from the nut, mm", "Next semitone, mm",
                    "Best bow place, mm from the bridge", "in finger-widths", "as part of the sounding string",
                    "Contact band, mm (in brackets: no band, nearly as good)", "Clean strokes of 100 at the best place",
                    "Clean strokes of 100, bow left behind"},
        .rows = {},
        .look = "stops"};
    for (const ClimbStop& stop : lesson.climb.stops) table.rows.push_back(row_of(stop, asked));
    return table;
}

}  // namespace

std::string numbers_part(const AskedLesson& asked, const Lesson& lesson) {
    const std::string clean = "A clean stroke speaks in time and keeps its tone: in tune within " +
                              short_number(asked.preset.player.pitch_tolerance) + " cents, at most " +
                              short_number(asked.preset.player.tone_level) +
                              " dB weaker and not much duller than the best this note gives. Of "
                              "100 strokes, with forces over the whole range and places straying as above, so many are "
                              "clean. A contact band is "
                              "where at least " +
                              strokes_of_100(asked.preset.player.band_share) + " are.";
    const std::string bandless = bandless_words(lesson.climb);
    return section("numbers", "Your numbers",
                   player_list(asked) + text_element("p", clean) + "\n" +
                       (bandless.empty() ? "" : text_element("p", bandless) + "\n") +
                       table_element(stops_table(asked, lesson)));
}

}  // namespace sim::report
