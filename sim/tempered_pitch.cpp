// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/tempered_pitch.hpp"

#include "analysis/units.hpp"

#include <array>
#include <cassert>
#include <cmath>

namespace sim {
namespace {

/// Share of the syntonic comma by which each fifth is narrow.
double comma_share(Temperament temperament) {
    switch (temperament) {
        case Temperament::quarter_comma:
            return 1.0 / 4.0;
        case Temperament::fifth_comma:
            return 1.0 / 5.0;
        case Temperament::sixth_comma:
            return 1.0 / 6.0;
        case Temperament::equal:
        case Temperament::rule_of_18:
            break;
    }
    return 0.0;
}

/// Cents by which a note lies above the equal one, A alike; `semitones` from A.
double offset(int semitones, Temperament temperament) {
    // Fifths from A for A, Bb, B, C, C#, D, Eb, E, F, F#, G, G#.
    constexpr std::array<int, 12> fifths{0, -5, 2, -3, 4, -1, -6, 1, -4, 3, -2, 5};
    return fifths[static_cast<std::size_t>(((semitones % 12) + 12) % 12)] * (tempered_fifth(temperament) - 700.0);
}

}  // namespace

double tempered_fifth(Temperament temperament) {
    const double share = comma_share(temperament);
    if (share == 0.0) return 700.0;
    return analysis::cents_between(1.5, 1.0) - share * analysis::cents_between(81.0, 80.0);
}

TemperedPitch nearest_pitch(double hz, const Tuning& tuning) {
    assert(hz > 0.0 && tuning.temperament != Temperament::rule_of_18);
    const double above = analysis::cents_between(hz, tuning.reference_pitch);
    const int equal = static_cast<int>(std::lround(above / 100.0));
    int best = equal;
    const auto distance = [&](int n) { return std::abs(above - 100.0 * n - offset(n, tuning.temperament)); };
    for (const int n : {equal - 1, equal + 1})
        if (distance(n) < distance(best)) best = n;
    const double note =
        tuning.reference_pitch * analysis::ratio_from_semitones(best + offset(best, tuning.temperament) / 100.0);
    return {.name = pitch_name(tuning.reference_pitch * analysis::ratio_from_semitones(best), tuning.reference_pitch),
            .hz = note,
            .cents = analysis::cents_between(hz, note)};
}

}  // namespace sim
