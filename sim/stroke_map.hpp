// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/batch.hpp"
#include "sim/stroke.hpp"

#include <vector>

namespace sim {

/// Which strokes of a note are played: every contact point with every force.
struct MapGrid {
    int contact_points = 40;  ///< even in ratio from the floor to 0.45 of the sounding length, >= 2
    int player_forces = 12;   ///< even in ratio over the player's range, >= 2
    int more_forces = 0;      ///< further forces under and over the range each, in the same ratio

    bool operator==(const MapGrid&) const = default;
};

/// Started strokes of one note over contact point and force, at the player's speed and rise.
struct StrokeMap {
    Note note;
    Player player;
    std::vector<double> contact_points;  ///< m, rising
    std::vector<double> forces;          ///< N, rising
    std::size_t first_player_force = 0;  ///< the player's range is forces[first … first + count)
    std::size_t player_force_count = 0;
    std::vector<StrokeResult> strokes;  ///< [contact point][force], force fastest

    const StrokeResult& at(std::size_t contact, std::size_t force) const {
        return strokes[contact * forces.size() + force];
    }
};

/// Plays the whole map.
StrokeMap started_map(const Note& note, const Player& player, const MapGrid& grid, const Workers& workers);

/// `count` values even in ratio from low to high.
struct Range {
    double low;
    double high;
};
std::vector<double> even_in_ratio(Range range, int count);

}  // namespace sim
