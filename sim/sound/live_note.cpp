// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/sound/live_note.hpp"

#include "analysis/partials.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sim::sound {

namespace {

constexpr double times_the_firmest = 3.0;
constexpr double loud_ratio = 0.05;  // contact ratio of the loudest usual stroke
constexpr double peak_over_rms = 3.0;

/// RMS of the ideal motion's sound, N: bridge force 2 Z v / (pi beta n) at harmonic n, through the body.
double ideal_sound(const String& string, double speed, std::span<const RadiatingMode> modes) {
    const double first = 2.0 * wave_impedance(string) * speed / (std::numbers::pi * loud_ratio);
    const double f0 = fundamental(string);
    double squares = 0.0;
    for (int n = 1; n * f0 <= analysis::brightness_limit_hz; ++n)
        squares += 0.5 * std::norm(first / n * response(modes, n * f0));
    return std::sqrt(squares);
}

int steps_per_sample(const Note& note, double card_rate) {
    return static_cast<int>(std::ceil(sample_rate(note, note.floor) / card_rate));
}

}  // namespace

LiveNote::LiveNote(const Preset& preset, int string, double stop, double card_rate)
    : note(make_note(preset, preset.strings.at(static_cast<std::size_t>(string)), stop)),
      fundamental_hz(fundamental(note.string)),
      nearest(note.floor),
      farthest(std::max(note.floor, farthest_contact(note))),
      greatest_force(sound::greatest_force(preset)),
      acceleration(preset.player.speed / std::max(preset.player.rise, 1e-3)),
      scale(live_scale(preset, open_string(preset, preset.strings[static_cast<std::size_t>(string)]))),
      factor(steps_per_sample(note, card_rate)),
      kernel(kernel_note(note, factor * card_rate)),
      modes(radiating_modes(note.bridge)),
      run(kernel, {}, nearest) {
    run.place_bow(nearest);
}

double greatest_force(const Preset& preset) { return times_the_firmest * preset.player.force_high; }

double live_scale(const Preset& preset, const String& open) {
    const double sound = ideal_sound(open, preset.player.speed, radiating_modes(preset.bridge));
    return sound > 0.0 ? analysis::ratio_from_db(peak_level_db) / (peak_over_rms * sound) : 0.0;
}

}  // namespace sim::sound
