// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/note_stroke.hpp"

#include "sim/speeds.hpp"

#include <algorithm>

namespace sim::passage {

namespace {

constexpr double rise_share = 0.25;  // of a note, for its speed to rise at the most

}  // namespace

std::optional<double> dynamic_scale(std::string_view dynamic) {
    if (dynamic == "ppp") return dynamics.front().factor;
    if (dynamic == "fff") return dynamics.back().factor;
    const auto found = std::ranges::find(dynamics, dynamic, &Dynamic::name);
    return found == dynamics.end() ? std::nullopt : std::optional(found->factor);
}

NoteStroke note_stroke(const StrokeTask& task, const Player& player) {
    NoteStroke stroke{.scale = dynamic_scale(task.dynamic).value_or(1.0)};
    // the speed rises and so misses half of its rise: the way is a little less than this
    stroke.hair = stroke.scale * player.speed * task.duration;
    if (stroke.hair > usable_hair) {
        stroke.scale *= usable_hair / stroke.hair;
        stroke.hair = usable_hair;
        stroke.hair_limited = true;
    }
    return stroke;
}

double longest_speaking(const Player& player, double period) {
    return player.rise + std::max(player.speak_time, player.speak_periods * period);
}

Player stroke_player(const Player& player, const NoteStroke& stroke, double duration) {
    Player scaled = player;
    scaled.force_low *= stroke.scale;
    scaled.force_high *= stroke.scale;
    scaled.speed *= stroke.scale;
    scaled.rise = std::min(player.rise, rise_share * duration);
    return scaled;
}

}  // namespace sim::passage
