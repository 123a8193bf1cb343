// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/ends_report.hpp"

#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/table.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cmath>

namespace sim::report {
namespace {

constexpr std::size_t shown_partials = 4;

const ForceInterval* main_of(const ForceWindow& window) {
    return window.main ? &window.intervals[*window.main] : nullptr;
}

Json end_part(const StringEnd& end) {
    Json part;
    part["stop_end"] = stop_end_name(end.end);
    part["finger_q"] = end.finger_q > 0.0 ? rounded(end.finger_q) : Json(nullptr);
    return part;
}

Json held_part(const HeldPlace& place, const Note& note) {
    Json part;
    add_place(part, place.contact_point, note);
    const ForceInterval* interval = main_of(place.held);
    part["held_min_newtons"] = interval ? rounded(interval->low) : Json(nullptr);
    part["held_max_newtons"] = interval ? rounded(interval->high) : Json(nullptr);
    part["one_interval"] = place.held.intervals.size() == 1;
    return part;
}

Json partials_part(const std::vector<RingingPartial>& partials) {
    Json part = Json::array();
    for (const RingingPartial& partial : partials)
        part.push_back({{"partial", partial.number},
                        {"hz", rounded(partial.frequency)},
                        {"q", rounded(partial.q)},
                        {"ring_time_s", rounded(partial.ring_time)}});
    return part;
}

Json answer_part(const EndAnswer& answer) {
    Json part = end_part(answer.end);
    part["points"] = Json::array();
    for (const HeldPlace& place : answer.places) part["points"].push_back(held_part(place, answer.note));
    part["stroke"]["force_newtons"] = rounded(answer.stroke.stroke.force);
    add_heard(part["stroke"], answer.stroke, answer.note);
    part["ring_time_s"] = rounded(answer.ring_time);
    part["partials"] = partials_part(answer.partials);
    return part;
}

std::string forces_cell(const ForceWindow& window) {
    const ForceInterval* interval = main_of(window);
    if (interval == nullptr) return "-";
    return newtons_cell(interval->low) + " to " + newtons_cell(interval->high) +
           (window.intervals.size() > 1 ? " *" : "");
}

bool any_split(const Ends& ends) {
    for (const EndAnswer& answer : ends.answers)
        for (const HeldPlace& place : answer.places)
            if (place.held.intervals.size() > 1) return true;
    return false;
}

std::string motion_words(Motion motion) {
    std::string words(motion_name(motion));
    std::ranges::replace(words, '_', ' ');
    return words;
}

std::string heard_table(const Ends& ends) {
    Table table({{"end of", "the string", true},
                 {"level", "dB"},
                 {"bright", "x f0"},
                 {"pitch", "cents"},
                 {"motion", "", true},
                 {"rings", "s"},
                 {"Q", "1st"},
                 {"of", "2nd"},
                 {"partial", "3rd"},
                 {"", "4th"}});
    for (const EndAnswer& answer : ends.answers) {
        std::vector<std::string> row{end_words(answer.end),
                                     fixed_cell(level_db(answer.stroke), 1),
                                     fixed_cell(brightness_f0(answer.stroke), 2),
                                     fixed_cell(pitch_cents(answer.stroke, answer.note), 1),
                                     motion_words(answer.stroke.verdict.motion),
                                     fixed_cell(answer.ring_time, 2)};
        for (std::size_t i = 0; i < shown_partials; ++i) row.push_back(fixed_cell(answer.partials[i].q, 0));
        table.add_row(row);
    }
    return table.text();
}

std::string forces_table(const Ends& ends) {
    std::vector<Table::Column> columns{{"bow at", "mm"}};
    for (const EndAnswer& answer : ends.answers) columns.push_back({"holds, N", end_words(answer.end), true});
    Table table(columns);
    for (std::size_t i = 0; i < ends.answers.front().places.size(); ++i) {
        std::vector<std::string> row{mm_cell(ends.answers.front().places[i].contact_point, 1)};
        for (const EndAnswer& answer : ends.answers) row.push_back(forces_cell(answer.places[i].held));
        table.add_row(row);
    }
    return table.text();
}

/// The finger of the preset's Q, or the one nearest to it (in ratio).
const EndAnswer* usual_finger(const Ends& ends) {
    const EndAnswer* nearest = nullptr;
    const auto away = [&](const EndAnswer& answer) { return std::abs(std::log(answer.end.finger_q / ends.usual_q)); };
    for (const EndAnswer& answer : ends.answers)
        if (answer.end.end == StopEnd::finger && (nearest == nullptr || away(answer) < away(*nearest)))
            nearest = &answer;
    return nearest;
}

const EndAnswer* fret_of(const Ends& ends) {
    const auto found = std::ranges::find(ends.answers, StopEnd::fret, [](const EndAnswer& a) { return a.end.end; });
    return found == ends.answers.end() ? nullptr : &*found;
}

/// Geometric mean over the contact points where both hold, of the finger's least force over the fret's.
std::optional<double> least_force_ratio(const EndAnswer& finger, const EndAnswer& fret) {
    double sum = 0.0;
    int count = 0;
    for (std::size_t i = 0; i < finger.places.size(); ++i) {
        const ForceInterval* soft = main_of(finger.places[i].held);
        const ForceInterval* hard = main_of(fret.places[i].held);
        if (soft == nullptr || hard == nullptr) continue;
        sum += std::log(soft->low / hard->low);
        ++count;
    }
    if (count == 0) return std::nullopt;
    return std::exp(sum / count);
}

}  // namespace

std::string end_words(const StringEnd& end) {
    std::string words(stop_end_name(end.end));
    return end.finger_q > 0.0 ? words + " Q " + short_number(end.finger_q) : words;
}

std::string ends_json(const Asked& asked, const Ends& ends) {
    Json document;
    document["run"] = run_part(asked.run);
    document["note"] = note_part(asked.note, asked.reference_pitch);
    add_place(document, ends.contact_point, asked.note);
    document["usual_end"] = stop_end_name(ends.usual);
    document["usual_finger_q"] = rounded(ends.usual_q);
    document["ends"] = Json::array();
    for (const EndAnswer& answer : ends.answers) document["ends"].push_back(answer_part(answer));
    return json_text(document);
}

std::string ends_csv(const Asked& asked, const Ends& ends) {
    Json rows = Json::array();
    for (const EndAnswer& answer : ends.answers) {
        Json whole = answer_part(answer);
        for (std::size_t i = 0; i < shown_partials; ++i)
            whole["q_" + std::to_string(i + 1)] = rounded(answer.partials[i].q);
        for (const HeldPlace& place : answer.places) {
            Json row = whole;
            row["string"] = asked.note.string.name;
            row["stop_semitones"] = rounded(asked.note.stop);
            row.update(held_part(place, answer.note));
            rows.push_back(row);
        }
    }
    return csv_text(
        rows, {"string", "stop_semitones", "stop_end", "finger_q", "contact_mm", "contact_ratio", "held_min_newtons",
               "held_max_newtons", "one_interval", "stroke/force_newtons", "stroke/motion", "stroke/level_db",
               "stroke/brightness_f0", "stroke/pitch_cents", "ring_time_s", "q_1", "q_2", "q_3", "q_4"});
}

std::string ends_table(const Asked& asked, const Ends& ends) {
    const std::string force = fixed_number(ends.answers.front().stroke.stroke.force, 2);
    std::string text = note_heading(asked) + "\n" + player_line(asked.player) + "\n\nOne stroke of " + force +
                       " N at " + mm_cell(ends.contact_point, 1) + " mm, then the bow lifted:\n" + heard_table(ends) +
                       "\nForces that hold:\n" + forces_table(ends);
    if (any_split(ends)) text += "* not one interval: in between are forces that do not hold\n";
    return text + "Nut and fret are the same hard end here; a finger's Q (50 to 200) is from memory.\n";
}

std::string ends_in_words(const Ends& ends) {
    const EndAnswer* finger = usual_finger(ends);
    const EndAnswer* fret = fret_of(ends);
    if (finger == nullptr || fret == nullptr) return "";
    std::string words =
        "Against a fret at the same place, a bare finger (Q " + short_number(finger->end.finger_q) + ")";
    const auto ratio = least_force_ratio(*finger, *fret);
    words +=
        ratio ? " needs " + fixed_number(*ratio, 2) + " times the force to hold the note" : " holds at no common place";
    const auto soft = brightness_f0(finger->stroke);
    const auto hard = brightness_f0(fret->stroke);
    if (soft && hard)
        words += ", sounds " + fixed_number(100.0 * std::abs(*soft / *hard - 1.0), 0) +
                 (*soft < *hard ? " % duller" : " % brighter");
    if (finger->ring_time && fret->ring_time)
        words += ", and rings " + fixed_number(*finger->ring_time, 2) + " s instead of " +
                 fixed_number(*fret->ring_time, 2) + " s once the bow is lifted";
    return words + ".";
}

}  // namespace sim::report
