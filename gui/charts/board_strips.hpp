// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/strip.hpp"
#include "sim/climb.hpp"
#include "sim/frets.hpp"

/// What is printed to be laid on an instrument; the command line, the window and the lesson print the same.
namespace gui::charts {

/// From the nut to the board's end: frets, the guide fret, and the semitones of the bare board.
Strip fret_strip(const sim::Preset& preset, const sim::FretTable& table);

/// From the bridge as far as any band goes: for each stop of the climb its band, or where there is none the most secure
/// stretch, and the best contact point.
Strip contact_ruler(const sim::Preset& preset, const sim::Climb& climb);

}  // namespace gui::charts
