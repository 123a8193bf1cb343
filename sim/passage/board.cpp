// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/board.hpp"

#include "analysis/units.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace sim::passage {
namespace {

constexpr int a4_key = 69;
constexpr double rounding = 1e-9;  // semitones: a note that lies right at the board's end

/// Cents of the temperament's fifth.
double fifth_cents(Temperament temperament) {
    const double pure = analysis::cents_between(3.0, 2.0);
    const double comma = analysis::cents_between(81.0, 80.0);
    switch (temperament) {
        case Temperament::quarter_comma:
            return pure - comma / 4.0;
        case Temperament::fifth_comma:
            return pure - comma / 5.0;
        case Temperament::sixth_comma:
            return pure - comma / 6.0;
        case Temperament::equal:
        case Temperament::rule_of_18:
            break;
    }
    return 700.0;
}

/// Steps along the line of fifths from A.
int fifths_from_a(const score::Spelling& spelling) {
    constexpr std::array<int, 7> natural{0, 2, -3, -1, 1, -4, -2};  // A … G
    return natural[static_cast<std::size_t>(spelling.step - 'A')] + 7 * spelling.alter;
}

/// Steps along the line of fifths that a fret lies above the nut.
int fret_fifths(int fret, bool chromatic) {
    constexpr std::array<int, 12> diatonic{0, -5, 2, -3, 4, -1, -6, 1, -4, 3, -2, 5};
    const int fifths = diatonic[static_cast<std::size_t>(fret % 12)];
    return chromatic && fifths < 0 ? fifths + 12 : fifths;
}

}  // namespace

double written_pitch(const score::Spelling& spelling, const Preset& preset) {
    const double off = fifths_from_a(spelling) * (fifth_cents(preset.temperament) - 700.0);
    return preset.reference_pitch * analysis::ratio_from_semitones(score::key_number(spelling) - a4_key + off / 100.0);
}

double fret_stop(const Preset& preset, int fret) {
    if (preset.temperament == Temperament::rule_of_18) return 12.0 * fret * std::log2(18.0 / 17.0);
    const bool chromatic = std::ranges::find(preset.chromatic_frets, fret) != preset.chromatic_frets.end();
    return fret + fret_fifths(fret, chromatic) * (fifth_cents(preset.temperament) - 700.0) / 100.0;
}

double from_nut(const PresetString& string, double stop) {
    return string.length * (1.0 - analysis::ratio_from_semitones(-stop));
}

int open_key(const PresetString& string) {
    constexpr double a4 = 440.0;
    return a4_key + static_cast<int>(std::lround(12.0 * std::log2(pitch_frequency(string.pitch, a4) / a4)));
}

std::optional<BoardPlace> board_place(const score::Spelling& spelling, const Preset& preset, int string) {
    const PresetString& on = preset.strings[static_cast<std::size_t>(string)];
    const double open = pitch_frequency(on.pitch, preset.reference_pitch);
    const double written = written_pitch(spelling, preset);
    BoardPlace place{.fret = score::key_number(spelling) - open_key(on)};
    if (place.fret < 0) return std::nullopt;
    place.bare = place.fret > preset.frets;
    place.stop = place.bare ? 12.0 * std::log2(written / open) : fret_stop(preset, place.fret);
    if (place.stop > last_stop(preset) + rounding) return std::nullopt;
    place.stop = std::min(place.stop, last_stop(preset));
    place.from_nut = from_nut(on, place.stop);
    place.pitch = place.bare ? written : open * analysis::ratio_from_semitones(place.stop);
    place.cents = place.bare ? 0.0 : analysis::cents_between(place.pitch, written);
    return place;
}

}  // namespace sim::passage
