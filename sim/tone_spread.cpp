// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/tone_spread.hpp"

#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>

namespace sim {

namespace {

std::optional<Spread> spread_of(std::vector<double> values) {
    if (values.empty()) return std::nullopt;
    std::ranges::sort(values);
    const std::size_t half = values.size() / 2;
    const double middle = values.size() % 2 == 1 ? values[half] : 0.5 * (values[half - 1] + values[half]);
    return Spread{values.front(), middle, values.back()};
}

std::size_t nearest_column(const StrokeMap& map, double contact_point) {
    const auto away = [&](double place) { return std::abs(std::log(place / contact_point)); };
    const auto nearest = std::ranges::min_element(map.contact_points, {}, away);
    return static_cast<std::size_t>(nearest - map.contact_points.begin());
}

}  // namespace

ToneSpread tone_spread(const StrokeMap& map, double contact_point) {
    const std::size_t column = nearest_column(map, contact_point);
    const double f0 = fundamental(map.note.string);
    std::vector<double> cents;
    std::vector<double> brightness;
    std::vector<double> levels;
    std::vector<double> clarities;
    for (std::size_t j = 0; j < map.player_force_count; ++j) {
        const Tone& tone = map.at(column, map.first_player_force + j).tone;
        clarities.push_back(tone.clarity);
        if (tone.level > 0.0) levels.push_back(tone.level);
        if (!tone.pitch) continue;
        cents.push_back(analysis::cents_between(*tone.pitch, f0));
        if (tone.centroid > 0.0) brightness.push_back(tone.centroid / *tone.pitch);
    }
    return {.contact_point = map.contact_points[column],
            .strokes = static_cast<int>(map.player_force_count),
            .pitched = static_cast<int>(cents.size()),
            .pitch = spread_of(cents),
            .brightness = spread_of(brightness),
            .level = spread_of(levels),
            .clarity = spread_of(clarities)};
}

}  // namespace sim
