// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

namespace sim {

/// What a player does and accepts.  Each is a key of the preset and an option of the commands.
struct Player {
    double force_low = 0.0;              ///< N, lightest stroke of the range
    double force_high = 0.0;             ///< N, firmest stroke of the range
    double speed = 0.0;                  ///< m/s, bow speed once risen
    double rise = 0.0;                   ///< s, in which the speed rises to its value
    double wander = 0.0;                 ///< m, how far the contact point strays either way
    double pitch_tolerance = 0.0;        ///< cents from the note
    double speak_time = 0.0;             ///< s from the first main slip
    double speak_periods = 0.0;          ///< periods from the first main slip; the longer of the two counts
    double tone_level = 0.0;             ///< dB under the note's best
    double tone_brightness_ratio = 0.0;  ///< of the note's best, 0..1
    double band_share = 0.0;             ///< security from which a place counts as in the band, 0..1
    double finger_width = 0.0;           ///< m
    double hand_span = 0.0;              ///< m, first to fourth finger

    bool operator==(const Player&) const = default;
};

/// Middle of the player's forces, in ratio, N.
inline double middle_force(const Player& player) { return std::sqrt(player.force_low * player.force_high); }

}  // namespace sim
