// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/batch.hpp"
#include "sim/stroke_map.hpp"

#include <vector>

/// A recording held against simulated strokes.
namespace sim::match {

/// Partials are compared up to here, Hz.
inline constexpr double compared_limit = 10000.0;

/// What one simulated stroke sounds like before any body.
struct StrokeSpectrum {
    Motion motion = Motion::silent;
    double pitch = 0.0;          ///< Hz; 0 = none found
    std::vector<double> levels;  ///< dB re 1 N, of the bridge force's partials 1, 2, … at that pitch; empty without one
};

/// Which strokes: every contact point with every force, even in ratio.
struct SpectraGrid {
    int contact_points = 120;  ///< from the floor to 0.45 of the sounding length, >= 3
    int forces = 10;           ///< over the player's range, >= 3
    double speed = 0.0;        ///< m/s, > 0

    bool operator==(const SpectraGrid&) const = default;
};

/// Spectra of a note's strokes from rest.
struct StrokeSpectra {
    Note note;
    double speed = 0.0;                   ///< m/s
    double rise = 0.0;                    ///< s
    std::vector<double> contact_points;   ///< m, rising
    std::vector<double> forces;           ///< N, rising
    std::vector<StrokeSpectrum> strokes;  ///< [contact point][force], force fastest

    const StrokeSpectrum& at(std::size_t contact, std::size_t force) const {
        return strokes[contact * forces.size() + force];
    }
};

/// Plays them all.
StrokeSpectra stroke_spectra(const Note& note, const Player& player, const SpectraGrid& grid, const Workers& workers);

}  // namespace sim::match
