// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/batch.hpp"
#include "sim/report/analyse_report.hpp"

#include <filesystem>
#include <memory>
#include <string>

namespace gui {

/// What a recording was asked, and what it says: as the command `analyse` gives it.
struct RecordingAnswer {
    sim::report::AskedRecording asked;
    analysis::Recording recording;
};
using RecordingAnswerPointer = std::shared_ptr<const RecordingAnswer>;

struct RecordingQuestion {
    std::filesystem::path file;
    sim::Tuning tuning;
};

/// The tuning that cents are counted from beside this instrument; frets by the rule of 18 make no keyboard: equal then.
sim::Tuning tuning_beside(const sim::Preset& preset);

/// InputError as analyse_file gives it; Stopped when asked to.
RecordingAnswer recording_answer(const RecordingQuestion& question, const sim::Workers& workers);

/// What to know of it, in plain sentences.
std::string recording_words(const RecordingAnswer& answer);

/// The recordings that come with the program: a simulated climb.
enum class Example { bow_follows, left_behind };
std::filesystem::path example_recording(Example example);

}  // namespace gui
