// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/tune.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace sim::score {
namespace {

constexpr double seconds_a_minute = 60.0;
constexpr double same_place = 1e-6;  // quarter notes: far below the shortest note written
constexpr int octave = 12;

/// Semitones of 'A' … 'G' above C.
int step_semitones(char step) {
    constexpr std::array<int, 7> semitones{9, 11, 0, 2, 4, 5, 7};
    assert(step >= 'A' && step <= 'G');
    return semitones[static_cast<std::size_t>(step - 'A')];
}

}  // namespace

std::string spelling_name(const Spelling& spelling) {
    std::string name(1, spelling.step);
    name.append(static_cast<std::size_t>(std::abs(spelling.alter)), spelling.alter < 0 ? 'b' : '#');
    return name + std::to_string(spelling.octave);
}

int key_number(const Spelling& spelling) {
    return octave * (spelling.octave + 1) + step_semitones(spelling.step) + spelling.alter;
}

double bar_length(const Metre& metre) { return 4.0 * metre.beats / metre.unit; }

double beat_length(const Metre& metre) {
    const bool compound = metre.unit >= 8 && metre.beats > 3 && metre.beats % 3 == 0;
    return (compound ? 3.0 : 1.0) * 4.0 / metre.unit;
}

Stress stress_at(const Metre& metre, double in_bar) {
    const auto falls_on = [&](double length) {
        return std::abs(in_bar - length * std::round(in_bar / length)) < same_place;
    };
    if (falls_on(bar_length(metre))) return Stress::downbeat;
    return falls_on(beat_length(metre)) ? Stress::beat : Stress::offbeat;
}

double seconds_at(const Tune& tune, double quarters) {
    assert(!tune.tempos.empty());
    double seconds = 0.0;
    for (std::size_t i = 0; i < tune.tempos.size(); ++i) {
        const Tempo& tempo = tune.tempos[i];
        const bool last = i + 1 == tune.tempos.size();
        const double end = last ? quarters : std::min(quarters, tune.tempos[i + 1].start);
        if (end > tempo.start) seconds += (end - tempo.start) * seconds_a_minute / tempo.quarters_a_minute;
    }
    return seconds;
}

}  // namespace sim::score
