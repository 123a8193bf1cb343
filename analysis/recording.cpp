// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/recording.hpp"

#include "analysis/note_measures.hpp"
#include "analysis/recording_warnings.hpp"
#include "analysis/sound_blocks.hpp"
#include "analysis/statistics.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <thread>

namespace analysis {
namespace {

constexpr double longest_measured = 8.0;    // s of a note
constexpr double shortest_measured = 0.06;  // s
constexpr double quiet_margin = 0.05;       // s around notes that count as noise no more
constexpr double least_quiet = 0.1;         // s

/// What of a note is measured, s: its steady part, the middle of a long one; all of it where hardly any is steady.
struct Stretch {
    double from = 0.0;
    double to = 0.0;
};
Stretch measured_stretch(const NoteSpan& span) {
    Stretch stretch{span.steady_from, span.steady_to};
    if (stretch.to - stretch.from < shortest_measured) stretch = {span.start, span.end};
    const double middle = 0.5 * (stretch.from + stretch.to);
    return {std::max(stretch.from, middle - 0.5 * longest_measured),
            std::min(stretch.to, middle + 0.5 * longest_measured)};
}

/// First pass: track, clipping, channels that cancel.
struct FirstPass {
    struct Clip {
        double time = 0.0;  ///< s
        int samples = 0;
    };
    std::vector<Clip> clips;
    double mono_power = 0.0;
    double power = 0.0;
};
FirstPass follow(const SoundBlocks& blocks, const RecordingPlan& plan, Recording& recording) {
    FirstPass pass;
    Tracker tracker(blocks.sample_rate, plan.range);
    double samples = 0.0;
    blocks.play([&](const SoundBlock& block) {
        tracker.add(block.mono);
        if (block.clipped > 0) pass.clips.push_back({samples / blocks.sample_rate, block.clipped});
        const double count = static_cast<double>(block.mono.size());
        for (const double sample : block.mono) pass.mono_power += sample * sample;
        pass.power += block.power * count;
        samples += count;
    });
    recording.track = tracker.finish();
    recording.duration = samples / blocks.sample_rate;
    recording.loudness = loudness_of(recording.track);
    return pass;
}

/// RMS of what lies well away from every note; 0 where there is hardly anything.
double noise_between(const std::vector<TrackPoint>& track, const std::vector<NoteSpan>& spans) {
    std::vector<double> levels;
    std::size_t next = 0;
    for (const TrackPoint& point : track) {
        while (next < spans.size() && spans[next].end + quiet_margin <= point.time) ++next;
        const bool quiet = next == spans.size() || point.time < spans[next].start - quiet_margin;
        if (quiet) levels.push_back(point.level);
    }
    return static_cast<double>(levels.size()) * track_step < least_quiet ? 0.0 : quantile(levels, 0.5);
}

/// A note's samples, waiting to be measured.
struct Waiting {
    NoteSpan span;
    std::vector<double> samples;
};

/// Measures what waits, shared over the threads, in its order.
void measure_all(std::vector<Waiting>& waiting, const RecordingPlan& plan, Recording& recording) {
    std::vector<RecordedNote> notes(waiting.size());
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
        for (std::size_t i = next++; i < waiting.size(); i = next++)
            notes[i] = measure_note(waiting[i].span, waiting[i].samples, plan, recording);
    };
    {
        std::vector<std::jthread> others;
        for (int t = 1; t < plan.threads; ++t) others.emplace_back(work);
        work();
    }
    for (RecordedNote& note : notes) recording.notes.push_back(std::move(note));
    waiting.clear();
}

/// Second pass: the samples of one note after another.
void measure(const SoundBlocks& blocks, const RecordingPlan& plan, const std::vector<NoteSpan>& spans,
             Recording& recording) {
    constexpr std::size_t at_once = 32;
    std::vector<Waiting> waiting;
    std::vector<double> samples;
    std::size_t next = 0;
    double at = 0.0;  // samples so far
    const auto finish_note = [&] {
        waiting.push_back({spans[next], std::move(samples)});
        samples = {};
        if (waiting.size() == at_once) measure_all(waiting, plan, recording);
        ++next;
    };
    blocks.play([&](const SoundBlock& block) {
        const double end = at + static_cast<double>(block.mono.size());
        while (next < spans.size()) {
            const Stretch stretch = measured_stretch(spans[next]);
            const double from = std::clamp(std::round(stretch.from * blocks.sample_rate), at, end);
            const double to = std::clamp(std::round(stretch.to * blocks.sample_rate), from, end);
            const auto part =
                block.mono.subspan(static_cast<std::size_t>(from - at), static_cast<std::size_t>(to - from));
            samples.insert(samples.end(), part.begin(), part.end());
            if (stretch.to * blocks.sample_rate >= end) break;
            finish_note();
        }
        at = end;
    });
    while (next < spans.size()) finish_note();
    measure_all(waiting, plan, recording);
}

}  // namespace

Recording analyse(const SoundBlocks& blocks, const RecordingPlan& plan) {
    Recording recording;
    recording.sample_rate = blocks.sample_rate;
    recording.channels = blocks.channels;
    const FirstPass pass = follow(blocks, plan, recording);
    const std::vector<NoteSpan> spans = find_notes(recording.track);
    recording.noise = noise_between(recording.track, spans);
    measure(blocks, plan, spans, recording);
    for (const FirstPass::Clip& clip : pass.clips) {
        recording.clipped += clip.samples;
        for (RecordedNote& note : recording.notes)
            if (clip.time >= note.span.start && clip.time < note.span.end) note.clipped += clip.samples;
    }
    recording.warnings = warnings_of(recording, {.length_unknown = blocks.length_unknown,
                                                 .first_clip = pass.clips.empty() ? 0.0 : pass.clips.front().time,
                                                 .mix_share = pass.power > 0.0 ? pass.mono_power / pass.power : 1.0});
    return recording;
}

Recording analyse_file(const std::filesystem::path& file, const RecordingPlan& plan) {
    return analyse(blocks_of_file(file), plan);
}

Recording analyse_sound(std::span<const double> samples, double sample_rate, const RecordingPlan& plan) {
    return analyse(blocks_of(samples, sample_rate), plan);
}

}  // namespace analysis
