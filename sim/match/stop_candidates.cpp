// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/stop_candidates.hpp"

#include "analysis/units.hpp"
#include "sim/preset_reader.hpp"

#include <algorithm>
#include <cmath>

namespace sim::match {
namespace {

constexpr double half_semitone = 50.0;  // cents
constexpr double semitone = 100.0;

bool is_meant(const PresetString& string, const KnownPlace& known) {
    return !known.string || *known.string == string.name;
}

}  // namespace

std::vector<StopCandidate> stop_candidates(const Preset& preset, const KnownPlace& known, double hz) {
    std::vector<StopCandidate> candidates;
    for (const PresetString& string : preset.strings) {
        if (!is_meant(string, known)) continue;
        const String open = open_string(preset, string);
        const double exact = analysis::cents_between(hz, fundamental(open)) / semitone;
        const double stop = known.stop.value_or(std::max(0.0, std::round(exact)));
        const double off = semitone * (exact - stop);
        if (stop > last_stop(preset) || std::abs(off) > (known.stop ? semitone : half_semitone)) continue;
        candidates.push_back(
            {.string = string.name, .stop = stop, .off_cents = off, .note = make_note(preset, open, stop, known.end)});
    }
    std::ranges::stable_sort(candidates, {}, &StopCandidate::stop);
    return candidates;
}

PitchEnds held_pitches(const Preset& preset, const KnownPlace& known) {
    PitchEnds ends{.lowest = 1e9, .highest = 0.0};
    for (const PresetString& string : preset.strings) {
        if (!is_meant(string, known)) continue;
        const double open = fundamental(open_string(preset, string));
        const double lowest = known.stop.value_or(0.0);
        const double highest = known.stop.value_or(std::floor(last_stop(preset)));
        ends.lowest = std::min(ends.lowest, open * analysis::ratio_from_semitones(lowest));
        ends.highest = std::max(ends.highest, open * analysis::ratio_from_semitones(highest));
    }
    return ends;
}

std::string held_range(const Preset& preset, const KnownPlace& known) {
    const PitchEnds ends = held_pitches(preset, known);
    return pitch_name(ends.lowest, preset.reference_pitch) + " to " + pitch_name(ends.highest, preset.reference_pitch);
}

}  // namespace sim::match
