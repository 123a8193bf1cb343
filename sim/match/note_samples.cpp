// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/note_samples.hpp"

#include <algorithm>
#include <cmath>

namespace sim::match {
namespace {

constexpr double longest = 3.0;  // s

/// Samples from … to of the sound.
struct Stretch {
    double from = 0.0;
    double to = 0.0;
};

Stretch stretch_of(const analysis::RecordedNote& note, double sample_rate) {
    const double middle = note.measured < note.span.steady_to - note.span.steady_from + 1e-6
                              ? 0.5 * (note.span.steady_from + note.span.steady_to)
                              : 0.5 * (note.span.start + note.span.end);
    const double half = 0.5 * std::min(longest, note.measured);
    return {std::round((middle - half) * sample_rate), std::round((middle + half) * sample_rate)};
}

}  // namespace

std::vector<NoteSamples> note_samples(const analysis::SoundBlocks& sound, const analysis::Recording& recording,
                                      std::size_t count) {
    std::vector<Stretch> stretches;
    std::vector<NoteSamples> samples;
    for (std::size_t i = 0; i < count; ++i) {
        const double measured = recording.notes[i].measured;
        stretches.push_back(stretch_of(recording.notes[i], sound.sample_rate));
        samples.push_back({.signal = {.samples = {}, .sample_rate = sound.sample_rate},
                           .skipped = 0.5 * (measured - std::min(longest, measured))});
    }
    double at = 0.0;
    sound.play([&](const analysis::SoundBlock& block) {
        const double end = at + static_cast<double>(block.mono.size());
        for (std::size_t i = 0; i < count; ++i) {
            const double from = std::max(at, stretches[i].from);
            const double to = std::min(end, stretches[i].to);
            if (from >= to) continue;
            const auto part =
                block.mono.subspan(static_cast<std::size_t>(from - at), static_cast<std::size_t>(to - from));
            std::vector<double>& kept = samples[i].signal.samples;
            kept.insert(kept.end(), part.begin(), part.end());
        }
        at = end;
    });
    return samples;
}

}  // namespace sim::match
