// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/json_values.hpp"
#include "sim/report/tone_values.hpp"
#include "sim/security.hpp"
#include "sim/tone_spread.hpp"
#include "sim/window.hpp"

/// Only for the sources of this folder: what several commands' JSON holds.
namespace sim::report {

/// What the note is: string, stop, place on the board, pitch.
Json note_part(const Note& note, double reference_pitch);
/// Adds how long the finger's step is there.
void add_finger_step(Json& part, const Note& note);

/// Adds "contact_mm", "contact_ratio".
void add_place(Json& part, double contact_point, const Note& note);
/// Adds "security", "speaks_share", "tone_share", "fails_by".
void add_security(Json& part, const Security& security);
/// Adds what is heard: motion, level, brightness, pitch, clarity; nulls without a stroke.
void add_heard(Json& part, const std::optional<StrokeResult>& stroke, const Note& note);

/// "contact_mm", "strokes", "pitched", and "low", "middle", "high" of each of "pitch_cents", "brightness_f0",
/// "level_db", "clarity_db"; or null.
Json spread_part(const std::optional<ToneSpread>& spread);

/// Adds "force_min_newtons", "force_max_newtons", "forgiveness_db" of the main interval; nulls where nothing speaks.
void add_speaking(Json& part, const std::optional<ForceWindow>& speaking);

/// near_mm, far_mm, near_bound, far_bound, width_mm; or null.
Json band_part(const std::optional<Band>& band);
/// Adds "best_mm", "best_ratio", "best_finger_widths", "security", "band", "other_bands", "stretch", "reason".
void add_band(Json& part, const BandResult& result, const Note& note, const Player& player);

/// The fault's name, or null for none.
Json fault_part(Fault fault);

}  // namespace sim::report
