// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/player.hpp"

#include <optional>

namespace gui {

struct NoteBand;

/// A tone as a microphone gives it.
struct PlayedTone {
    double hz = 0.0;
    double brightness_f0 = 0.0;  ///< centroid in multiples of the pitch
};

/// The note that a played tone is held against.
struct WantedTone {
    double hz = 0.0;
    double tolerance_cents = 0.0;
    double best_brightness = 0.0;   ///< in multiples of the pitch, as simulated; 0 = not known
    double brightness_ratio = 0.0;  ///< of the best, that is asked for
};
WantedTone wanted_tone(double hz, const sim::Player& player, const NoteBand* band);

/// Whether it keeps its tone, as far as a microphone can tell: a level says nothing there, since distance, room and the
/// input's gain are not known.
struct ToneVerdict {
    double cents = 0.0;           ///< above the note
    bool another_note = false;    ///< more than half a semitone off
    bool in_tune = false;         ///< within the tolerance
    std::optional<double> share;  ///< of the best brightness; nothing where that is not known
    std::optional<bool> bright;   ///< enough of it
    bool keeps() const { return in_tune && bright.value_or(true); }
};
ToneVerdict judge_tone(const PlayedTone& played, const WantedTone& wanted);

}  // namespace gui
