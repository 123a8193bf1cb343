// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/recording_answer.hpp"

#include "analysis/sound_blocks.hpp"
#include "gui/model/watched_sound.hpp"
#include "sim/demo_recordings.hpp"
#include "sim/report/run_record.hpp"

namespace gui {
namespace {

constexpr double passes = 2.0;  // a recording is read twice

}  // namespace

sim::Tuning tuning_beside(const sim::Preset& preset) {
    const bool keyboard = preset.temperament != sim::Temperament::rule_of_18;
    return {.reference_pitch = preset.reference_pitch,
            .temperament = keyboard ? preset.temperament : sim::Temperament::equal};
}

RecordingAnswer recording_answer(const RecordingQuestion& question, const sim::Workers& workers) {
    RecordingAnswer answer;
    answer.asked = {.version = BOWBAND_VERSION,
                    .file = question.file.string(),
                    .file_hash = {},
                    .tuning = question.tuning,
                    .plan = {.threads = workers.threads}};
    answer.recording =
        analysis::analyse(watched(analysis::blocks_of_file(question.file), workers, passes), answer.asked.plan);
    answer.asked.file_hash = sim::report::file_hash(question.file);
    return answer;
}

std::string recording_words(const RecordingAnswer& answer) {
    const std::string name = std::filesystem::path(answer.asked.file).filename().string();
    std::string words = name + ": " + sim::report::recording_line(answer.recording) + ".";
    for (const std::string& warning : answer.recording.warnings) words += " " + warning;
    if (!answer.recording.notes.empty())
        words += " Motions are named by what simulated strokes sound like: a hint, not a verdict.";
    return words;
}

std::filesystem::path example_recording(Example example) {
    return sim::find_recording(example == Example::bow_follows ? "bow_follows.flac" : "bow_left_behind.flac");
}

}  // namespace gui
