// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/recording_answer.hpp"

#include "analysis/sound_blocks.hpp"
#include "sim/demo_recordings.hpp"
#include "sim/report/run_record.hpp"

#include <algorithm>

namespace gui {
namespace {

constexpr double passes = 2.0;  // a recording is read twice

/// The same sound, told about and stopped on the way.
analysis::SoundBlocks watched(const analysis::SoundBlocks& blocks, const sim::Workers& workers) {
    analysis::SoundBlocks result = blocks;
    const auto played = std::make_shared<double>(0.0);  // s, over all passes
    result.play = [blocks, &workers, played](const analysis::BlockTaker& take) {
        blocks.play([&](const analysis::SoundBlock& block) {
            if (workers.stop.stop_requested()) throw sim::Stopped();
            take(block);
            *played += static_cast<double>(block.mono.size()) / blocks.sample_rate;
            if (workers.progress && blocks.duration > 0.0)
                workers.progress(std::min(1.0, *played / (passes * blocks.duration)));
        });
    };
    return result;
}

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
    answer.recording = analysis::analyse(watched(analysis::blocks_of_file(question.file), workers), answer.asked.plan);
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
