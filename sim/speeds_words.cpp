// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/speeds.hpp"
#include "sim/text.hpp"

namespace sim {

namespace {

std::string newtons(double force) { return fixed_number(force, force < 1.0 ? 2 : 1); }
std::string speed(const SpeedRow& row) { return short_number(row.player.speed) + " m/s"; }

std::string forces(const Player& player) {
    return newtons(player.force_low) + " to " + newtons(player.force_high) + " N";
}

std::string speaking(const SpeedRow& row) {
    if (!row.speaking || !row.speaking->main) return "no force speaks in time";
    const ForceInterval& interval = row.speaking->intervals[*row.speaking->main];
    return newtons(interval.low) + " to " + newtons(interval.high) + " N speak";
}

std::string wants_words(const SpeedRow& row) {
    const std::string note = "Stop " + short_number(row.note.stop) + ": ";
    if (!row.is_secure()) return note + "no stroke of the speeds and forces tried speaks and keeps its tone anywhere.";
    return note + "the note does best at " + speed(row) + " with " + forces(row.player) + ", " +
           mm_words(*row.band.best) + " from the bridge: " + percent_words(row.band.at_best.security) +
           " of strokes speak and keep their tone; there " + speaking(row) + ".";
}

/// "a stretch of 12 mm about 40 mm, 45 % secure, where 0.03 to 0.2 N speak"
std::string room_words(const SpeedRow& row) {
    if (!row.band.best) return "nowhere to speak";
    if (!row.is_secure()) return "no place where a stroke keeps its tone";
    return std::string(row.band.band ? "a band" : "no band but a stretch") + " of " +
           mm_words(row.place()->far - row.place()->near) + " about " + mm_words(*row.band.best) + ", " +
           percent_words(row.band.at_best.security) + " secure (" + speaking(row) + ")";
}

std::string cost_words(const SpeedRow& slow, const SpeedRow& quick) {
    return "With the same forces a slow stroke (" + speed(slow) + ") has " + room_words(slow) + "; a quick one (" +
           speed(quick) + ") has " + room_words(quick) + ".";
}

std::string scaling_words(const SpeedRow& first, const SpeedRow& last) {
    const std::string rule = "With force in proportion to speed ";
    if (!first.is_secure()) return rule + "no stroke keeps its tone at any speed tried.";
    if (&first == &last) return rule + "strokes keep their tone at " + speed(first) + " only.";
    return rule + "strokes keep their tone from " + speed(first) + " to " + speed(last) +
           "; between these the best place goes from " + mm_words(*first.band.best) + " to " +
           mm_words(*last.band.best) + " and the secure share from " + percent_words(first.band.at_best.security) +
           " to " + percent_words(last.band.at_best.security) + ".";
}

}  // namespace

std::string speeds_in_words(const SpeedStudy& study) {
    std::string words;
    for (const SpeedAnswer& answer : speed_answers(study)) {
        const auto row = [&](std::size_t i) -> const SpeedRow& { return study.rows[i]; };
        words += (words.empty() ? "" : "\n") + wants_words(row(answer.wants)) + " " +
                 cost_words(row(answer.slow), row(answer.quick)) + " " +
                 scaling_words(row(answer.first), row(answer.last));
    }
    return words;
}

}  // namespace sim
