// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/sound/passage_takes.hpp"

#include "sim/sound/render.hpp"

#include <array>
#include <cmath>

namespace sim::sound {
namespace {

using analysis::Signal;
using passage::BowedNote;
using passage::BowWay;
using passage::Passage;

constexpr double after_the_last = 0.3;  // s of silence

std::size_t sample_at(double time) { return static_cast<std::size_t>(std::llround(time * sound_rate)); }

Signal sound_of(const passage::NoteRun& run, const Bridge& bridge) {
    Signal sound = render({run.record.bridge_force, run.sample_rate}, radiating_modes(bridge));
    fade_ends(sound);
    return sound;
}

}  // namespace

HeardPassage hear_passage(const Passage& whole, const Workers& workers) {
    const BowedNote& last = whole.notes.back();
    const std::size_t length = sample_at(last.start + last.duration + after_the_last);
    std::array<Signal, 2> takes{Signal{std::vector<double>(length), sound_rate},
                                Signal{std::vector<double>(length), sound_rate}};
    // strokes never overlap, so that every run writes samples of its own
    const auto hear = [&](std::size_t i, BowWay way, const passage::NoteRun& run) {
        if (run.record.diverged) return;
        const BowedNote& note = whole.notes[i];
        const Signal sound = sound_of(run, kind_of(whole, note).note.bridge);
        std::vector<double>& take = takes[way == BowWay::left_behind ? 0 : 1].samples;
        const std::size_t from = sample_at(note.start);
        for (std::size_t k = 0; k < sound.samples.size() && from + k < take.size(); ++k)
            take[from + k] += sound.samples[k];
    };
    HeardPassage heard{.played = simulate(whole, workers, hear), .takes = {}};
    share_gain(takes);
    heard.takes = {std::move(takes[0]), std::move(takes[1])};
    return heard;
}

}  // namespace sim::sound
