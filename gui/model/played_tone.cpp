// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/played_tone.hpp"

#include "analysis/units.hpp"
#include "gui/model/note_band.hpp"

#include <cmath>

namespace gui {

WantedTone wanted_tone(double hz, const sim::Player& player, const NoteBand* band) {
    return {.hz = hz,
            .tolerance_cents = player.pitch_tolerance,
            .best_brightness = band != nullptr ? band->best_brightness : 0.0,
            .brightness_ratio = player.tone_brightness_ratio};
}

ToneVerdict judge_tone(const PlayedTone& played, const WantedTone& wanted) {
    constexpr double half_a_semitone = 50.0;  // cents
    ToneVerdict verdict{.cents = analysis::cents_between(played.hz, wanted.hz)};
    verdict.another_note = std::abs(verdict.cents) > half_a_semitone;
    verdict.in_tune = std::abs(verdict.cents) <= wanted.tolerance_cents;
    if (wanted.best_brightness > 0.0 && played.brightness_f0 > 0.0) {
        verdict.share = played.brightness_f0 / wanted.best_brightness;
        verdict.bright = *verdict.share >= wanted.brightness_ratio;
    }
    return verdict;
}

}  // namespace gui
