// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_analyse.hpp"

#include "analysis/checked_write.hpp"
#include "analysis/errors.hpp"
#include "cli/chart_calls.hpp"
#include "cli/setting_text.hpp"
#include "sim/demo_recordings.hpp"
#include "sim/preset_reader.hpp"
#include "sim/report/analyse_report.hpp"
#include "sim/report/run_record.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cctype>
#include <thread>

namespace cli {
namespace {

constexpr SettingOption range_option{"--range-hz", "range_hz", SettingKind::span, "A:B",
                                     "Where pitches are looked for; default: 35:4200"};

double reference_from(const std::string& text) {
    constexpr double lowest = 300.0;
    constexpr double highest = 550.0;
    const double hz = number_from(text, "--reference-pitch-hz");
    if (!(hz >= lowest && hz <= highest))
        throw analysis::InputError("--reference-pitch-hz", "must be A4 from 300 to 550 Hz, is " + sim::number_text(hz));
    return hz;
}

sim::Temperament temperament_from(const std::string& text) {
    const auto temperament = sim::temperament_from_name(text);
    if (!temperament || *temperament == sim::Temperament::rule_of_18)
        throw analysis::InputError("--temperament", "must be equal, quarter_comma, fifth_comma or sixth_comma, is \"" +
                                                        sim::one_line(text) + "\"");
    return *temperament;
}

/// A pitch name or Hz.
double note_from(const std::string& text, double reference_pitch) {
    constexpr double lowest = 20.0;
    constexpr double highest = 5000.0;
    const bool named = !text.empty() && std::isalpha(static_cast<unsigned char>(text.front())) != 0;
    const double hz = named ? sim::pitch_frequency(text, reference_pitch) : number_from(text, "--note");
    if (!(hz >= lowest && hz <= highest))
        throw analysis::InputError("--note",
                                   "must be a pitch such as D4, or Hz from 20 to 5000, is " + sim::one_line(text));
    return hz;
}

analysis::PitchRange range_from(const std::string& text) {
    constexpr double lowest = 30.0;
    constexpr double highest = 5000.0;
    const sim::report::SettingValue value = setting_from(text, range_option);
    const auto* span = std::get_if<sim::report::Span>(&value);
    if (span == nullptr || !(span->from >= lowest && span->to <= highest && 2.0 * span->from <= span->to))
        throw analysis::InputError(range_option.option,
                                   "must be A:B from 30 to 5000 Hz, an octave or more apart, such "
                                   "as 60:2000, is \"" +
                                       sim::one_line(text) + "\"");
    return {span->from, span->to};
}

}  // namespace

AnalyseCommand::AnalyseCommand(CLI::App& program) {
    CLI::App& parser = add_parser(program, "analyse", "What a recording says: notes, pitch, brightness, motion",
                                  "bowband analyse bow_follows.flac --reference-pitch-hz 415 --chart heard.png");
    parser.add_option("SOUND", file_, "Recording of single notes: WAV, FLAC, AIFF, Ogg or MP3, one or two channels")
        ->type_name("");
    parser.add_option("--reference-pitch-hz", reference_, "A4 from which cents are counted; default: 440")
        ->type_name("HZ");
    parser
        .add_option("--temperament", temperament_,
                    "From which cents are counted: equal, quarter_comma, fifth_comma or sixth_comma; default: equal")
        ->type_name("NAME");
    parser
        .add_option("--note", note_,
                    "The note that was meant, as D4 or in Hz, if all are the same: helps to tell how "
                    "the string moved")
        ->type_name("PITCH|HZ");
    parser.add_option(range_option.option, range_, range_option.help)->type_name(range_option.placeholder);
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.chart = true});
}

void AnalyseCommand::run() {
    if (file_.empty()) throw analysis::InputError("SOUND", "missing; give a recording (.wav, .flac, …)");
    sim::report::AskedRecording asked{
        .version = program_version(), .file = file_, .file_hash = {}, .tuning = {}, .plan = {}};
    if (reference_) asked.tuning.reference_pitch = reference_from(*reference_);
    if (temperament_) asked.tuning.temperament = temperament_from(*temperament_);
    if (note_) asked.plan.intended_hz = note_from(*note_, asked.tuning.reference_pitch);
    if (range_) asked.plan.range = range_from(*range_);
    constexpr unsigned most_threads = 8;
    asked.plan.threads = static_cast<int>(std::clamp(std::thread::hardware_concurrency(), 1U, most_threads));
    output_->check();
    const std::filesystem::path file = sim::find_recording(file_);
    const analysis::Recording recording = analysis::analyse_file(file, asked.plan);
    asked.file_hash = sim::report::file_hash(file);
    output_->write({.json = [&] { return analyse_json(asked, recording); },
                    .csv = [&] { return analyse_csv(asked, recording); },
                    .table = [&] { return analyse_table(asked, recording); },
                    .words = [&] { return sim::report::analyse_in_words(recording); },
                    .waveform = {},
                    .chart = [&](const auto& place) { draw_recording_chart(place, asked, recording); },
                    .sounds = {}});
}

}  // namespace cli
