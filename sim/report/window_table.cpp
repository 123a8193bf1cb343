// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/table.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

#include <array>
#include <cmath>

namespace sim::report {
namespace {

/// "0.05 to 0.61", and a mark where the forces are not one interval.
std::string forces_cell(const std::optional<ForceWindow>& window) {
    if (!window || !window->main) return "-";
    const ForceInterval& interval = window->intervals[*window->main];
    return newtons_cell(interval.low) + " to " + newtons_cell(interval.high) +
           (window->intervals.size() > 1 ? " *" : "");
}

std::string fault_cell(Fault fault) { return fault == Fault::none ? "-" : std::string(fault_name(fault)); }

/// "motion" in words: "multiple slip"
std::string motion_words(Motion motion) {
    std::string words(motion_name(motion));
    for (char& c : words)
        if (c == '_') c = ' ';
    return words;
}

std::vector<std::string> row_of(const WindowPoint& point, const Asked& asked) {
    const double place = point.security.contact_point;
    return {mm_cell(place, 1),
            fixed_number(place / asked.player.finger_width, 1),
            fixed_number(point.contact_ratio, 3),
            percent_cell(point.security.security),
            percent_cell(point.security.speaks_share),
            fault_cell(point.security.fails_by),
            forces_cell(point.speaking),
            forces_cell(point.held),
            fixed_cell(level_db(point.middle), 1),
            fixed_cell(pitch_cents(point.middle, asked.note), 0),
            fixed_cell(point.middle.tone.clarity, 0),
            motion_words(point.middle.verdict.motion)};
}

bool any_split(const std::vector<WindowPoint>& points) {
    for (const WindowPoint& point : points)
        if (point.speaking.intervals.size() > 1 || (point.held && point.held->intervals.size() > 1)) return true;
    return false;
}

std::string best_words(const Asked& asked, const BandResult& band) {
    const double best = *band.best;
    return mm_cell(best, 0) + " mm from the bridge (" + fixed_number(best / asked.player.finger_width, 1) +
           " finger-widths, 1/" + fixed_number(asked.note.string.length / best, 1) + " of the sounding string)";
}

std::string middle_words(const Player& player) { return fixed_number(middle_force(player), 2) + " N"; }

}  // namespace

std::string player_line(const Player& player) {
    return "bow at " + short_number(player.speed) + " m/s, " + short_number(player.force_low) + " to " +
           short_number(player.force_high) + " N, straying " + short_number(analysis::mm_from_metres(player.wander)) +
           " mm either way";
}

std::string note_heading(const Asked& asked) {
    const double hz = fundamental(asked.note.string);
    const std::string stop = asked.note.stop == 0.0 ? "open" : "stop " + short_number(asked.note.stop);
    return asked.run.preset.name + ", string " + asked.note.string.name + ", " + stop + ": " +
           pitch_name(hz, asked.reference_pitch) + ", " + fixed_number(hz, 1) + " Hz, " +
           mm_cell(asked.note.string.length, 0) + " mm sounding";
}

std::string window_table(const Asked& asked, const Window& window) {
    Table table({{"bow at", "mm"},
                 {"bow at", "fingers"},
                 {"bow at", "of string"},
                 {"secure", "%"},
                 {"speaks", "%"},
                 {"fails", "mostly by", true},
                 {"force that", "speaks, N", true},
                 {"force that", "holds, N", true},
                 {"level", "dB"},
                 {"pitch", "cents"},
                 {"clarity", "dB"},
                 {"motion", "at " + middle_words(asked.player), true}});
    for (const WindowPoint& point : window.points) table.add_row(row_of(point, asked));
    std::string text = note_heading(asked) + "\n" + player_line(asked.player) + "\n\n" + table.text();
    if (any_split(window.points))
        text += "* not one interval: in between are forces that do not play (all in the JSON)\n";
    return text;
}

std::string window_in_words(const Asked& asked, const BandResult& band) {
    if (!band.best) return "No stroke of this range speaks anywhere on this note. Reason: " + band.reason + ".";
    const std::string best = "The bow does best " + best_words(asked, band) + ", where " +
                             percent_cell(band.at_best.security) + " % of strokes speak and keep their tone. ";
    if (!band.band) return best + "No stretch of the string is secure enough to be called a band: " + band.reason + ".";
    return best + "Its band reaches from " + mm_cell(band.band->near, 0) + " to " + mm_cell(band.band->far, 0) +
           " mm; nearer the bridge strokes fail by: " + std::string(fault_name(band.band->near_bound)) +
           ", farther away by: " + std::string(fault_name(band.band->far_bound)) + ".";
}

std::string here_table(const Asked& asked, const HereResult& here) {
    const WindowPoint& point = here.point;
    std::vector<std::pair<std::string, std::string>> lines = {
        {"bow at", mm_cell(point.security.contact_point, 1) + " mm, " +
                       fixed_number(point.security.contact_point / asked.player.finger_width, 1) + " finger-widths, " +
                       fixed_number(point.contact_ratio, 3) + " of the string"},
        {"secure", percent_cell(point.security.security) + " % of strokes"},
        {"speaks", percent_cell(point.security.speaks_share) + " % of strokes"},
        {"fails mostly by", fault_cell(point.security.fails_by)},
        {"force that speaks, N", forces_cell(point.speaking)},
        {"force that holds, N", forces_cell(point.held)},
        {"motion at " + middle_words(asked.player), motion_words(point.middle.verdict.motion)},
        {"best place", here.band.best ? best_words(asked, here.band) : "-"},
        {"band",
         here.band.band ? mm_cell(here.band.band->near, 0) + " to " + mm_cell(here.band.band->far, 0) + " mm" : "none"},
        {"past the near edge", here.from_near ? mm_cell(here.from_near, 0) + " mm" : "-"},
        {"short of the far edge", here.from_far ? mm_cell(here.from_far, 0) + " mm" : "-"}};
    return note_heading(asked) + "\n" + player_line(asked.player) + "\n\n" + value_lines(lines);
}

std::string here_in_words(const HereResult& here) { return here.advice; }

}  // namespace sim::report
