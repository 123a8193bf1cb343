// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/stroke_map.hpp"

#include <optional>

namespace sim {

/// Least, middle (the median) and greatest of some values.
struct Spread {
    double low = 0.0;
    double middle = 0.0;
    double high = 0.0;

    bool operator==(const Spread&) const = default;
};

/// What the player's forces make of the tone at one contact point.  Strokes that don't speak count too: they are heard.
struct ToneSpread {
    double contact_point = 0.0;        ///< m, the map's own that lies nearest in ratio to the one asked for
    int strokes = 0;                   ///< the player's forces
    int pitched = 0;                   ///< of these strokes a pitch was found in so many
    std::optional<Spread> pitch;       ///< cents from the note; of those with a pitch
    std::optional<Spread> brightness;  ///< centroid in multiples of the pitch; of those with a pitch
    std::optional<Spread> level;       ///< N RMS through the body's radiation weights
    std::optional<Spread> clarity;     ///< dB

    bool operator==(const ToneSpread&) const = default;
};
ToneSpread tone_spread(const StrokeMap& map, double contact_point);

}  // namespace sim
