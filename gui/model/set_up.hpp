// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/preset_fields.hpp"

#include "analysis/signal.hpp"
#include "sim/batch.hpp"

#include <vector>

namespace gui {

/// What a player can find out with a ruler, a tuner and their ears, in the units they would use.
struct SetUp {
    QString name;
    int string_index = 0;
    double length_mm = 0.0;  ///< of that string; the others change in proportion
    double reference_pitch_hz = 0.0;
    double finger_width_mm = 0.0;
    double hair_width_mm = 0.0;
    double lightest = 0.0;  ///< N
    double firmest = 0.0;   ///< N

    bool operator==(const SetUp&) const = default;
};

/// As the preset has it.
SetUp set_up_of(const sim::Preset& preset, int string_index);

/// The preset with what was measured put in, each value named as measured by the player.  InputError where the reader
/// would not take it.
sim::Preset set_up(const sim::Preset& preset, const SetUp& wanted);

/// A stroke to listen to and to like or not.
struct StrokeToLike {
    double force = 0.0;  ///< N
    analysis::Signal sound;
};
/// Open string of the set-up at a tenth of its length, over a range of forces wider than the preset's; one gain for
/// all.
std::vector<StrokeToLike> strokes_to_like(const sim::Preset& preset, int string_index, const sim::Workers& workers);

/// Range of forces of those liked: from the lightest to the firmest; none for fewer than two.
struct LikedForces {
    double lightest = 0.0;
    double firmest = 0.0;

    bool operator==(const LikedForces&) const = default;
};
std::optional<LikedForces> liked_forces(const std::vector<double>& liked);

}  // namespace gui
