// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/motion.hpp"
#include "analysis/note_spans.hpp"
#include "analysis/tone.hpp"
#include "analysis/track.hpp"

#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace analysis {

/// What is asked of a recording.
struct RecordingPlan {
    PitchRange range{35.0, 4200.0};  ///< of the notes
    double intended_hz = 0.0;        ///< the note that was meant; 0 = not known.  Helps to name motions.
    int threads = 1;                 ///< that measure notes; results don't depend on it

    bool operator==(const RecordingPlan&) const = default;
};

/// One note of a recording.
struct RecordedNote {
    NoteSpan span;
    std::optional<Tone> tone;           ///< of the steady part, its middle 8 s at the most; none without a pitch
    double measured = 0.0;              ///< s, how much of it that is
    double level = 0.0;                 ///< RMS of the steady part, full scale = 1
    std::optional<double> clean_after;  ///< s from the start: see time_to_clean
    MotionGuess motion;                 ///< of the last 0.6 s of the steady part
    MotionFeatures features{};          ///< that it was guessed from
    double foreign_share = 0.0;         ///< of the lines' power, that only a second tone explains
    bool pure_interval = false;         ///< its partials look like two tones in a pure interval
    int clipped = 0;                    ///< samples in this note

    bool operator==(const RecordedNote&) const = default;
};

/// What a recording says.
struct Recording {
    double sample_rate = 0.0;  ///< Hz, of the file
    std::size_t channels = 1;
    double duration = 0.0;  ///< s
    Loudness loudness;
    double noise = 0.0;  ///< RMS where nothing is played; 0 where something always is
    int clipped = 0;     ///< samples
    std::vector<RecordedNote> notes;
    std::vector<TrackPoint> track;
    std::vector<std::string> warnings;  ///< sentences for people

    bool operator==(const Recording&) const = default;
};

/// Analyses a sound file of one or two channels (their mean), read twice in blocks: some 25 MB for ten minutes.
/// InputError as SoundReader gives it, and for more channels or more than 4 hours.
Recording analyse_file(const std::filesystem::path& file, const RecordingPlan& plan);

/// The same for anything that can be played through twice.
struct SoundBlocks;
Recording analyse(const SoundBlocks& blocks, const RecordingPlan& plan);

/// The same for sound at hand.
Recording analyse_sound(std::span<const double> samples, double sample_rate, const RecordingPlan& plan);

}  // namespace analysis
