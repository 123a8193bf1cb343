// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/note.hpp"

#include <cmath>

/// A cello whose body is one strong mode at 180 Hz, to look for wolf notes.  Invented but for the mode of 0.15 kg and
/// Q 30 under 0.9 kg/s, which stands for strong wolves (from memory).
namespace tests {

struct WolfCase {
    const char* string;    ///< of the cello
    double mass;           ///< kg, of the mode
    double semitones_off;  ///< the note, from the mode
};

inline constexpr double wolf_hz = 180.0;

inline sim::Preset wolf_cello(double mass) {
    sim::Preset preset = sim::find_preset("cello");
    preset.bridge = {.kind = sim::BridgeKind::modes, .resistance = 0.0, .modes = {{wolf_hz, 30.0, mass, 1.0}}};
    preset.sources["/bridge"] = "invented, one strong mode";
    return preset;
}

/// Stopped by a fret, so that only string and body lose.
inline sim::Note wolf_note(const WolfCase& c) {
    const sim::Preset preset = wolf_cello(c.mass);
    const sim::PresetString& string = sim::preset_string(preset, c.string);
    const double on_mode = 12.0 * std::log2(wolf_hz / sim::fundamental(sim::open_string(preset, string)));
    return sim::make_note(preset, string, on_mode + c.semitones_off, sim::StopEnd::fret);
}

}  // namespace tests
