// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"

#include <array>
#include <cassert>
#include <cmath>

namespace sim {
namespace {

constexpr int octave = 12;
constexpr int a4 = 4 * octave + 9;  // semitones above C0

/// Semitones of a pitch name above C0, or nothing.
std::optional<int> semitones_above_c0(std::string_view name) {
    constexpr std::string_view letters = "C D EF G A B";  // each at its semitone
    if (name.size() < 2 || name.front() == ' ') {
        return std::nullopt;
    }
    const std::size_t letter = letters.find(name.front());
    if (letter == std::string_view::npos) {
        return std::nullopt;
    }
    int semitones = static_cast<int>(letter);
    const std::string_view accidentals = name.substr(1, name.size() - 2);
    for (const char accidental : accidentals) {
        if ((accidental != '#' && accidental != 'b') || accidental != accidentals.front()) {
            return std::nullopt;
        }
        semitones += accidental == '#' ? 1 : -1;
    }
    if (accidentals.size() > 2 || name.back() < '0' || name.back() > '9') {
        return std::nullopt;
    }
    return semitones + octave * (name.back() - '0');
}

}  // namespace

double pitch_frequency(const std::string& pitch, double reference_pitch) {
    const std::optional<int> semitones = semitones_above_c0(pitch);
    if (!semitones) {
        throw analysis::InputError("pitch \"" + pitch + "\"",
                                   "must be a letter A to G, then # or b where needed, then the octave 0 to 9: "
                                   "D4, Bb3, F#4");
    }
    return reference_pitch * analysis::ratio_from_semitones(*semitones - a4);
}

std::string pitch_name(double hz, double reference_pitch) {
    assert(hz > 0.0 && reference_pitch > 0.0);
    constexpr std::array<const char*, octave> names = {"C", "C#", "D", "Eb", "E", "F", "F#", "G", "G#", "A", "Bb", "B"};
    const int semitones = a4 + static_cast<int>(std::lround(analysis::cents_between(hz, reference_pitch) / 100.0));
    const int above = ((semitones % octave) + octave) % octave;
    return names[static_cast<std::size_t>(above)] + std::to_string((semitones - above) / octave);
}

}  // namespace sim
