// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/batch.hpp"
#include "sim/stroke_map.hpp"

#include <vector>

/// A recording held against simulated strokes.
namespace sim::match {

/// Partials are compared up to here, Hz, and up to this number: higher ones scatter among strokes nearly alike by as
/// much as they could tell.
inline constexpr double compared_limit = 10000.0;
inline constexpr int compared_partials = 32;

/// What one simulated stroke sounds like before any body.
struct StrokeSpectrum {
    Motion motion = Motion::silent;
    double pitch = 0.0;          ///< Hz; 0 = none found, or not played
    std::vector<double> levels;  ///< dB re 1 N, of the bridge force's partials 1, 2, … at that pitch; empty without one

    bool operator==(const StrokeSpectrum&) const = default;
};

/// Which strokes are played.
struct SpectraGrid {
    int contact_points = 120;  ///< even in ratio from the floor to 0.45 of the sounding length, >= 5
    int forces = 16;  ///< even in ratio over the player's range, >= 3; a multiple of strokes_at_once costs least

    bool operator==(const SpectraGrid&) const = default;
};

/// Spectra of a note's strokes from rest, at the player's speed and rise.
struct StrokeSpectra {
    Note note;
    Player player;
    std::vector<double> contact_points;   ///< m, rising evenly in ratio from the floor to 0.45 of the sounding length
    std::vector<double> forces;           ///< N, rising
    std::vector<StrokeSpectrum> strokes;  ///< [contact point][force], force fastest

    const StrokeSpectrum& at(std::size_t contact, std::size_t force) const {
        return strokes[contact * forces.size() + force];
    }
};

/// Plays every fourth contact point, and the others between where a neighbour of these gave Helmholtz motion.
StrokeSpectra stroke_spectra(const Note& note, const Player& player, const SpectraGrid& grid, const Workers& workers);

}  // namespace sim::match
