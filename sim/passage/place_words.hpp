// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/hand.hpp"

#include <string>

/// Places on the board as a player names them.
namespace sim::passage {

/// A place on the bare board: "31 mm above the guide fret", "12 mm above fret 7", "231 mm from the nut".
/// Above is nearer the bridge.
std::string bare_words(const Preset& preset, const PresetString& string, double from_nut);
/// "open", "fret 4", "bare board, 31 mm above the guide fret", "231 mm from the nut".
std::string stop_words(const Preset& preset, const PresetString& string, const BoardPlace& place);
/// Where the first finger stands: "fret 5", "the guide fret", "31 mm above the guide fret", "231 mm from the nut".
std::string hand_words(const Preset& preset, const Hand& hand, const HandState& state);
/// What the hand finds that place by: "fret 5", "guide fret", "octave harmonic"; empty for nothing.
std::string landmark_words(const Preset& preset, const Hand& hand, int place);

/// With "at" where it names a place and no distance: "at fret 5", "31 mm above the guide fret".
std::string at_words(const std::string& place);

/// "one" … "twelve", then digits.
std::string count_words(std::size_t count);
/// "bar 3, note 2 (E5)".
std::string note_words(const score::Tune& tune, std::size_t i);

}  // namespace sim::passage
