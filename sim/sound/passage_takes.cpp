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

/// The sound of one note; nothing where no bow can stand or the run left all sense.
Signal note_sound(const Passage& whole, const BowedNote& note, BowWay way) {
    const auto stroke = note_stroke_of(whole, note, way);
    if (!stroke) return {{}, sound_rate};
    const passage::NoteKind& kind = kind_of(whole, note);
    passage::NoteRun run = passage::run_note(kind.note, *stroke, 0.0);
    if (run.record.diverged) return {{}, sound_rate};
    Signal sound = render({std::move(run.record.bridge_force), run.sample_rate}, radiating_modes(kind.note.bridge));
    fade_ends(sound);
    return sound;
}

}  // namespace

PassageTakes passage_takes(const Passage& whole, const Workers& workers) {
    const BowedNote& last = whole.notes.back();
    const std::size_t length = sample_at(last.start + last.duration + after_the_last);
    std::array<Signal, 2> takes{Signal{std::vector<double>(length), sound_rate},
                                Signal{std::vector<double>(length), sound_rate}};
    // strokes never overlap, so that every job writes samples of its own
    for_each_job(2 * static_cast<int>(whole.notes.size()), workers, [&](int job) {
        const BowedNote& note = whole.notes[static_cast<std::size_t>(job / 2)];
        const Signal sound = note_sound(whole, note, job % 2 == 0 ? BowWay::left_behind : BowWay::follows);
        std::vector<double>& take = takes[static_cast<std::size_t>(job % 2)].samples;
        const std::size_t from = sample_at(note.start);
        for (std::size_t i = 0; i < sound.samples.size() && from + i < take.size(); ++i)
            take[from + i] += sound.samples[i];
    });
    share_gain(takes);
    return {std::move(takes[0]), std::move(takes[1])};
}

}  // namespace sim::sound
