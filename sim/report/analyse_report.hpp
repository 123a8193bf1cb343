// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/recording.hpp"
#include "sim/tempered_pitch.hpp"

#include <string>

/// The answer of `analyse` as text.
namespace sim::report {

/// What was asked of a recording.
struct AskedRecording {
    std::string version;    ///< of the program
    std::string file;       ///< as it was named
    std::string file_hash;  ///< of its bytes, by file_hash
    Tuning tuning;
    analysis::RecordingPlan plan;
};

/// "run", "recording", "notes", "warnings".
std::string analyse_json(const AskedRecording& asked, const analysis::Recording& recording);
/// A line for each note.
std::string analyse_csv(const AskedRecording& asked, const analysis::Recording& recording);
std::string analyse_table(const AskedRecording& asked, const analysis::Recording& recording);
/// What to know, in plain sentences.
std::string analyse_in_words(const analysis::Recording& recording);
/// "3.2 s, 2 channels, 48000 Hz: 4 notes": for a chart.
std::string recording_line(const analysis::Recording& recording);

}  // namespace sim::report
