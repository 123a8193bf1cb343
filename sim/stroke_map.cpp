// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/stroke_map.hpp"

#include "sim/stroke_batch.hpp"

#include <cmath>

namespace sim {

std::vector<double> even_in_ratio(Range range, int count) {
    std::vector<double> values;
    for (int i = 0; i < count; ++i) values.push_back(range.low * std::pow(range.high / range.low, i / (count - 1.0)));
    values.front() = range.low;  // exactly, whatever pow rounds
    values.back() = range.high;
    return values;
}

StrokeMap started_map(const Note& note, const Player& player, const MapGrid& grid, const Workers& workers) {
    StrokeMap map{.note = note, .player = player, .contact_points = {}, .forces = {}, .strokes = {}};
    map.contact_points = even_in_ratio({note.floor, farthest_contact(note)}, grid.contact_points);
    const double step = std::pow(player.force_high / player.force_low, 1.0 / (grid.player_forces - 1.0));
    for (int i = grid.more_forces; i > 0; --i) map.forces.push_back(player.force_low * std::pow(step, -i));
    for (double force : even_in_ratio({player.force_low, player.force_high}, grid.player_forces))
        map.forces.push_back(force);
    for (int i = 1; i <= grid.more_forces; ++i) map.forces.push_back(player.force_high * std::pow(step, i));
    map.first_player_force = static_cast<std::size_t>(grid.more_forces);
    map.player_force_count = static_cast<std::size_t>(grid.player_forces);

    std::vector<Stroke> strokes;
    for (const double contact_point : map.contact_points)
        for (const double force : map.forces) strokes.push_back(started_stroke(note, player, {contact_point, force}));
    map.strokes = play_all(note, strokes, workers);
    return map;
}

}  // namespace sim
