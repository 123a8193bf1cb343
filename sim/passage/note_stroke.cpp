// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/note_stroke.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace sim::passage {

namespace {

constexpr double rise_share = 0.25;  // of a note, for its speed to rise at the most

constexpr std::array<std::pair<std::string_view, double>, 8> scales{
    {{"ppp", 0.35}, {"pp", 0.5}, {"p", 0.65}, {"mp", 0.8}, {"mf", 1.0}, {"f", 1.25}, {"ff", 1.5}, {"fff", 1.8}}};

}  // namespace

std::optional<double> dynamic_scale(std::string_view dynamic) {
    const auto found = std::ranges::find(scales, dynamic, &std::pair<std::string_view, double>::first);
    return found == scales.end() ? std::nullopt : std::optional(found->second);
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
