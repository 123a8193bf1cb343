// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"

#include <string>

namespace sim {

/// Cents of the temperament's fifth: 3/2 narrowed by its share of the syntonic comma (81:80); 700 for equal and
/// rule_of_18, which tempers nothing but places frets.
double tempered_fifth(Temperament temperament);

/// A note of a keyboard tuned in a temperament.
struct TemperedPitch {
    std::string name;  ///< as pitch_name gives it
    double hz = 0.0;
    double cents = 0.0;  ///< by which what was heard lies above it

    bool operator==(const TemperedPitch&) const = default;
};

/// How a keyboard is tuned.
struct Tuning {
    double reference_pitch = 440.0;  ///< Hz of A4
    Temperament temperament = Temperament::equal;

    bool operator==(const Tuning&) const = default;
};

/// The nearest note of the twelve, E flat to G sharp by fifths from A, each fifth narrow by the temperament's share of
/// the syntonic comma (81:80).  Not for rule_of_18, which places frets and no pitches.
TemperedPitch nearest_pitch(double hz, const Tuning& tuning);

}  // namespace sim
