// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/simulated.hpp"

#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>

namespace sim::passage {

namespace {

constexpr double gap_share = 0.1;  // of a note, between strokes
constexpr double longest_gap = 0.04;
constexpr double told_periods = 18.0;  // the judge's least for Helmholtz motion

double stroke_duration(const BowedNote& note) {
    return note.duration - std::min(longest_gap, gap_share * note.duration);
}

/// The part of the path that a stroke goes, its time counted from the stroke's beginning.
Profile path_of(const Profile& path, const BowedNote& note, double duration) {
    Profile part{{{0.0, value_at(path, note.start)}}};
    for (const Profile::Point& point : path.points) {
        const double time = point.time - note.start;
        if (time > 0.0 && time < duration) part.points.push_back({time, point.value});
    }
    part.points.push_back({duration, value_at(path, note.start + duration)});
    return part;
}

/// `from` is the first second of the bridge force to keep.
NoteRun run_note(const Note& note, const FreeStroke& stroke, double from) {
    NoteRun run{.sample_rate = sample_rate(note, smallest_value(stroke.drive.contact_point)), .record = {}};
    const kernel::Wanted wanted{.steps = static_cast<int>(std::lround(stroke.duration * run.sample_rate)),
                                .bridge_from = static_cast<int>(from * run.sample_rate)};
    run.record = kernel::run_reference(kernel_note(note, run.sample_rate), stroke.drive, stroke.start, wanted);
    return run;
}

PlayedNote judged_run(const NoteKind& kind, const FreeStroke& stroke, const NoteRun& run) {
    const double f0 = fundamental(kind.note.string);
    const double late = std::max(stroke.duration - heard_for, stroke.duration / 2.0);
    const Judged answer = judged(kind.note, run.record, run.sample_rate,
                                 {.speed = stroke.drive.speed,
                                  .last_speed = kind.player.speed,
                                  .contact_point = value_at(stroke.drive.contact_point, (late + stroke.duration) / 2.0),
                                  .duration = stroke.duration});
    PlayedNote note{.bowed = true, .verdict = answer.verdict, .tone = answer.tone};
    note.too_short = stroke.duration < kind.player.rise + told_periods / f0;
    if (note.tone.pitch) note.cents = analysis::cents_between(*note.tone.pitch, f0);
    return note;
}

}  // namespace

std::optional<FreeStroke> note_stroke_of(const Passage& passage, const BowedNote& note, BowWay way) {
    const NoteKind& kind = kind_of(passage, note);
    const double duration = stroke_duration(note);
    const Profile place =
        way == BowWay::follows ? path_of(passage.path, note, duration) : constant_profile(passage.left_behind);
    if (!can_stand(kind.note, smallest_value(place)) || !can_stand(kind.note, greatest_value(place)))
        return std::nullopt;
    return FreeStroke{.drive = {.speed = rising_profile({kind.player.speed, kind.player.rise}),
                                .force = constant_profile(note.force),
                                .contact_point = place},
                      .start = {},
                      .duration = duration};
}

SimulatedPassage simulate(const Passage& passage, const Workers& workers, const HearRun& hear) {
    const std::size_t count = passage.notes.size();
    SimulatedPassage simulated{std::vector<PlayedNote>(count), std::vector<PlayedNote>(count)};
    for_each_job(2 * static_cast<int>(count), workers, [&](int job) {
        const std::size_t i = static_cast<std::size_t>(job) / 2;
        const NoteKind& kind = kind_of(passage, passage.notes[i]);
        const BowWay way = job % 2 == 0 ? BowWay::left_behind : BowWay::follows;
        const auto stroke = note_stroke_of(passage, passage.notes[i], way);
        if (!stroke) return;
        const double from = hear ? 0.0 : std::max(0.0, stroke->duration - judged_for);
        const NoteRun run = run_note(kind.note, *stroke, from);
        if (hear) hear(i, way, run);
        (way == BowWay::left_behind ? simulated.left_behind : simulated.follows)[i] = judged_run(kind, *stroke, run);
    });
    return simulated;
}

bool sounds(const PlayedNote& note) { return note.bowed && note.verdict.motion == Motion::helmholtz; }

}  // namespace sim::passage
