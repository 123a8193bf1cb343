// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/force_window.hpp"
#include "sim/security.hpp"
#include "sim/tone_spread.hpp"

#include <optional>
#include <string>
#include <vector>

namespace sim {

/// Which stops a climb visits and how finely.
struct ClimbPlan {
    std::vector<double> stops;  ///< semitones, rising, at least one
    MapGrid grid{.contact_points = 40, .player_forces = 12, .more_forces = 0};
    std::optional<StopEnd> end;  ///< instead of the usual one, for every stop
};

/// What one contact point gives at one stop: shares over the range, and a stroke of the range's middle force.
struct ClimbPlace {
    double contact_point = 0.0;  ///< m
    Security security;
    std::optional<StrokeResult> stroke;  ///< none where no bow can stand: under the floor or past the finger
    std::optional<ToneSpread> spread;    ///< of the tone over the player's forces; none there either
};

/// One stop of a climb.
struct ClimbStop {
    Note note;
    double from_nut = 0.0;       ///< m, stop place
    double next_semitone = 0.0;  ///< m, to the next semitone up
    double cents_per_mm = 0.0;   ///< of moving the finger
    BandResult band;
    std::optional<ForceWindow>
        speaking;            ///< forces that speak at the best contact point, edges to 2 %; none where nothing speaks
    ClimbPlace left_behind;  ///< the bow stays where it suited the lowest stop
    std::optional<ClimbPlace> follows;  ///< the bow at the best contact point; none where nothing speaks
};

struct Climb {
    Player player;
    std::vector<ClimbStop> stops;
};

Climb find_climb(const Preset& preset, const PresetString& string, const Player& player, const ClimbPlan& plan,
                 const Workers& workers);

/// The maps of a climb, played once, to be judged under several sets of limits.
std::vector<StrokeMap> climb_maps(const Preset& preset, const PresetString& string, const Player& player,
                                  const ClimbPlan& plan, const Workers& workers);

/// A climb from its maps alone: no strokes and no speaking forces at the places found.
Climb climb_places(const std::vector<StrokeMap>& maps, const Player& player);

/// Two plain sentences: how the bow must move, and what happens to one left behind.
std::string climb_in_words(const Climb& climb);

/// The body mode within `cents` of a frequency, if any, Hz.
std::optional<double> body_mode_near(const Bridge& bridge, double hz, double cents);

}  // namespace sim
