// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/player.hpp"

#include <optional>
#include <string_view>

namespace sim::passage {

/// By how much a dynamic makes the bow firmer and faster than the player's own strokes, both together: sim::dynamics;
/// ppp as pp and fff as ff.  Nothing for a word that is no dynamic.
std::optional<double> dynamic_scale(std::string_view dynamic);

/// How much bow a stroke may take, m: what is left of the hair without its ends.
/// source   common practice, no source
inline constexpr double usable_hair = 0.6;

/// A note as the bow hand sees it.
struct StrokeTask {
    std::string_view dynamic;  ///< what is no dynamic leaves the player's own strokes
    double duration = 0.0;     ///< s, > 0
};

/// How the bow hand answers.
struct NoteStroke {
    double scale = 1.0;         ///< of the player's force and speed
    double hair = 0.0;          ///< m of hair that the stroke takes
    bool hair_limited = false;  ///< slower and lighter than the dynamic asks: the hair would not last

    bool operator==(const NoteStroke&) const = default;
};

/// Force and speed scale together, so that the forces that speak keep their place in the player's range.  A stroke
/// that would take more than the usable hair is made as slow as it must be, and as much lighter.
NoteStroke note_stroke(const StrokeTask& task, const Player& player);

/// How long a stroke takes at the longest until the string speaks, s: its rise, and the time given to it then.
double longest_speaking(const Player& player, double period);

/// The player of that stroke: forces and speed scaled; in a short note the speed rises within a quarter of it.
Player stroke_player(const Player& player, const NoteStroke& stroke, double duration);

}  // namespace sim::passage
