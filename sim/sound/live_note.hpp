// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/reference_run.hpp"
#include "sim/note.hpp"
#include "sim/sound/render.hpp"

#include <memory>
#include <vector>

namespace sim::sound {

/// A note ready to be bowed by hand, and its state while it is.
///
/// It runs at a whole multiple of the card's rate, at least the rate that its floor asks for, so that the bow may stand
/// anywhere; it comes down to the card's rate through analysis::Decimator.
///
/// memory   all of it is taken here; neither copied nor moved, since the run keeps references into it
struct LiveNote {
    LiveNote(const Preset& preset, int string, double stop, double card_rate);
    LiveNote(const LiveNote&) = delete;
    LiveNote& operator=(const LiveNote&) = delete;

    Note note;
    double fundamental_hz;
    double nearest;         ///< m, of contact points
    double farthest;        ///< m
    double greatest_force;  ///< N that the run takes: see greatest_force()
    double acceleration;    ///< m/s², by which the bow's speed changes: the player's speed over the rise
    double scale;           ///< full scale per N of sound
    int factor;             ///< steps of the simulation a sample of the card
    kernel::Note kernel;
    std::vector<RadiatingMode> modes;
    kernel::ReferenceRun run;
    long serial = 0;  ///< counted by the voice
};

/// Firmest stroke of the hand, N: three times the player's firmest.  A release then grows 2.4-fold within a step of the
/// simulation, the most that its step for the rosin's heat follows.
double greatest_force(const Preset& preset);

/// Full scale per newton of sound, one for all stops of a string, so that their levels compare: peak_level_db for the
/// open string in ideal motion at a twentieth of its length and the player's speed.  Its peak is taken as three times
/// its RMS.
double live_scale(const Preset& preset, const String& open);

}  // namespace sim::sound
