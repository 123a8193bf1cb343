// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/note_measures.hpp"

#include "analysis/level.hpp"
#include "analysis/polyphony.hpp"
#include "analysis/spectrum.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>

namespace analysis {
namespace {

constexpr double clean_cents = 25.0;
constexpr double clean_under_db = 6.0;
constexpr double clean_db = 20.0;
constexpr double clean_time = 0.1;  // s
constexpr double frames_a_second = 60.0;

std::span<const TrackPoint> points_of(std::span<const TrackPoint> track, const NoteSpan& span) {
    const auto index = [&](double time) {
        return std::min(track.size(), static_cast<std::size_t>(std::lround(time / track_step)));
    };
    return track.subspan(index(span.start), index(span.end) - index(span.start));
}

/// What the tone as a whole speaks against: what slides over a quarter of a tone is not steady, and what repeats so
/// well is not raucous.
bool contradicts(const Tone& tone, HeardMotion motion) {
    constexpr double still = 50.0;  // cents; the fit has heard vibrato of up to 40
    constexpr double repeating_db = 15.0;
    if (motion == HeardMotion::raucous) return tone.clarity_db >= repeating_db;
    const bool steady =
        motion == HeardMotion::helmholtz || motion == HeardMotion::multiple_slip || motion == HeardMotion::s_motion;
    return steady && tone.stability > still;
}

/// A few samples less at both ends, so that their transform is quick: planning one of any length takes longer than all
/// measures together.
std::span<const double> quick_part(std::span<const double> samples) {
    if (samples.size() < 2) return samples;
    const std::size_t length = fast_length_within(samples.size());
    return samples.subspan((samples.size() - length) / 2, length);
}

}  // namespace

std::optional<double> time_to_clean(std::span<const TrackPoint> track, const NoteSpan& span, const Tone& tone) {
    const auto points = points_of(track, span);
    const double least = std::min(clean_db, tone.clarity_db - clean_under_db);
    const auto needed = static_cast<std::size_t>(std::lround(clean_time / track_step));
    std::size_t clean = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const bool now = points[i].hz > 0.0 && points[i].clarity_db >= least &&
                         std::abs(cents_between(points[i].hz, tone.hz)) <= clean_cents;
        clean = now ? clean + 1 : 0;
        if (clean >= needed || (clean > 0 && i + 1 == points.size()))
            return static_cast<double>(i + 1 - clean) * track_step;
    }
    return std::nullopt;
}

RecordedNote measure_note(const NoteSpan& span, std::span<const double> samples, const RecordingPlan& plan,
                          const Recording& recording) {
    RecordedNote note{.span = span};
    note.level = rms(samples);
    const double rate = recording.sample_rate;
    const double seconds = static_cast<double>(samples.size()) / rate;
    note.measured = seconds;
    if (span.pitched) {
        const auto frames = static_cast<std::size_t>(std::clamp(frames_a_second * seconds, 4.0, 200.0));
        note.tone = measure_tone(quick_part(samples), rate, {.range = plan.range, .most_frames = frames});
    }
    if (note.tone) {
        note.clean_after = time_to_clean(recording.track, span, *note.tone);
        note.pure_interval = is_pure_interval(note.tone->partials);
    }
    note.foreign_share = second_tone_share(samples, rate, note.tone ? note.tone->hz : 0.0);
    constexpr double still_cents =
        1.5;  // half of what would be taken out: the note's end may stray more than all of it
    const bool still = note.tone && note.tone->stability < still_cents;
    const auto heard = std::min(samples.size(), static_cast<std::size_t>(motion_time * rate));
    note.features = motion_features(samples.last(heard), rate,
                                    {.noise = recording.noise, .intended_hz = plan.intended_hz, .still = still});
    note.motion = guess_motion(note.features);
    if (note.tone && contradicts(*note.tone, note.motion.motion)) note.motion.motion = HeardMotion::unclear;
    return note;
}

}  // namespace analysis
