// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/audio_file.hpp"
#include "sim/preset.hpp"
#include "sim/sound/render.hpp"
#include "sim/sound/takes.hpp"

namespace tests {

inline constexpr double bowed_mm = 35.0;

/// One simulated stroke on the octave of a bass viol's first string, 35 mm from the bridge, between silences.
inline void put_stroke(const std::filesystem::path& place) {
    const sim::Preset preset = sim::find_preset("division_bass_viol");
    const sim::Note note = make_note(preset, preset.strings.front(), 12.0);
    sim::Stroke stroke = started_stroke(note, preset.player, {.contact_point = 1e-3 * bowed_mm, .force = 0.2});
    stroke.duration = 1.2;
    std::vector<analysis::Signal> takes{sim::sound::take_of(play_recorded(note, stroke), note.bridge)};
    sim::sound::share_gain(takes);
    const std::vector<double> silence(9600, 0.0);
    takes.front().samples.insert(takes.front().samples.begin(), silence.begin(), silence.end());
    takes.front().samples.insert(takes.front().samples.end(), silence.begin(), silence.end());
    analysis::write_audio(place, takes.front());
}

}  // namespace tests
