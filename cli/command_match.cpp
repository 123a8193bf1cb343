// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_match.hpp"

#include "analysis/checked_write.hpp"
#include "analysis/errors.hpp"
#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/demo_recordings.hpp"
#include "sim/preset_reader.hpp"
#include "sim/report/match_report.hpp"

#include <CLI/CLI.hpp>

namespace cli {
namespace {

constexpr SettingOption region_share_option{"--region-share", "region_share", SettingKind::number, "SHARE",
                                            "Share of the likelihood that a region holds; default: 0.8"};
constexpr SettingOption chart_note_option{"--chart-note", "chart_note", SettingKind::number, "N",
                                          "Note that the chart shows; default: the first of which something is said"};

sim::match::MatchPlan plan_of(Question& question) {
    sim::match::KnownPlace known;
    if (!question.every_string) known.string = question.string.name;
    if (question.run.settings.contains("stop_semitones")) {
        if (question.every_string)
            throw analysis::InputError("--stop", "is a place on one string; name it by --string too");
        known.stop = question.one_stop();
        sim::make_note(question.preset, question.string, *known.stop, question.stop_end);  // complains
    }
    known.end = question.stop_end;
    sim::match::SpectraGrid grid;
    grid.contact_points = question.whole(contact_points_option, grid.contact_points, {5, 400, ""});
    grid.forces = question.whole(forces_option, grid.forces, {3, 64, ""});
    sim::match::MatchPlan plan = match_plan(known, grid);
    plan.region_share = question.number(region_share_option, plan.region_share, {0.1, 0.99, ""});
    return plan;
}

/// Index of the note that the chart shows.
std::size_t chart_note_of(const Question& question, const sim::match::Match& match) {
    const auto asked = question.run.settings.find(chart_note_option.key);
    if (asked == question.run.settings.end()) return sim::report::first_told(match);
    const auto number = static_cast<std::size_t>(std::get<double>(asked->second));
    if (number > match.notes.size())
        throw analysis::InputError(chart_note_option.option, "the recording has " + std::to_string(match.notes.size()) +
                                                                 " notes to compare, no " + std::to_string(number));
    return number - 1;
}

}  // namespace

MatchCommand::MatchCommand(CLI::App& program) {
    CLI::App& parser =
        add_parser(program, "match", "A recording held against simulated strokes: where the bow may have been",
                   "bowband match bow_follows.flac division_bass_viol --string 1 --contact-points 24 --forces 8 "
                   "--chart match.png");
    parser.add_option("SOUND", file_, "Recording of single notes: WAV, FLAC, AIFF, Ogg or MP3, one or two channels")
        ->type_name("");
    options_ =
        std::make_unique<RunOptions>(parser, "match",
                                     std::initializer_list<SettingOption>{contact_points_option, forces_option,
                                                                          region_share_option, chart_note_option},
                                     RunOptions::Asks::one_or_every_string);
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.chart = true});
}

void MatchCommand::run() {
    if (file_.empty()) throw analysis::InputError("SOUND", "missing; give a recording (.wav, .flac, …) and a PRESET");
    Question question = options_->ask();
    require_force_range(question);
    const sim::match::MatchPlan plan = plan_of(question);
    if (question.run.settings.contains(chart_note_option.key)) question.whole(chart_note_option, 1, {1, 40, ""});
    output_->check();
    const std::filesystem::path file = sim::find_recording(file_);
    sim::match::Match match;
    {
        Progress progress(output_->quiet());
        match =
            match_recording(analysis::blocks_of_file(file), question.preset, plan, progress.workers(question.workers));
    }
    const sim::report::AskedMatch asked{.run = question.run,
                                        .file = file_,
                                        .file_hash = sim::report::file_hash(file),
                                        .reference_pitch = question.preset.reference_pitch,
                                        .temperament = question.preset.temperament,
                                        .region_share = plan.region_share};
    const std::size_t shown = chart_note_of(question, match);
    output_->write({.json = [&] { return match_json(asked, match); },
                    .csv = [&] { return match_csv(asked, match); },
                    .table = [&] { return match_table(asked, match); },
                    .words = [&] { return match_in_words(asked, match); },
                    .waveform = {},
                    .chart = [&](const auto& place) { draw_match_chart(place, asked, match, shown); },
                    .tone_chart = {},
                    .tone_csv = {},
                    .sounds = {}});
}

}  // namespace cli
