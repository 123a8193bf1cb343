// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_passage.hpp"

#include "analysis/errors.hpp"
#include "sim/passage/fingering.hpp"
#include "sim/report/passage_report.hpp"
#include "sim/score/change_tune.hpp"

#include <CLI/CLI.hpp>

#include <filesystem>

namespace cli {
namespace {

constexpr SettingOption tune_option{"TUNE", "tune", SettingKind::word, "",
                                    "A tune: MusicXML (.musicxml, .xml, .mxl), MIDI (.mid), or words, in a file (.txt) "
                                    "or here: \"D4:1 E4:1/2 r:1 F#4:2\""};
constexpr SettingOption part_option{
    "--part", "part", SettingKind::word, "NAME",
    "Part (MusicXML) or track (MIDI), by name or number; default: the first with notes"};
constexpr SettingOption voice_option{"--voice", "voice", SettingKind::word, "NAME",
                                     "Voice of the part (MusicXML); default: its first"};
constexpr SettingOption tempo_option{"--quarters-a-minute", "quarters_a_minute", SettingKind::number, "N",
                                     "One tempo from beginning to end; default: the tune's own"};
constexpr SettingOption fingers_option{"--fingers", "fingers", SettingKind::word, "LIST",
                                       "Strings and fingers that are kept: \"2.1,string=1,finger=4 3.2,finger=1\" for "
                                       "the first note of bar 2, the second of bar 3"};
constexpr SettingOption alternatives_option{"--alternatives", "alternatives", SettingKind::number, "N",
                                            "How many ways to finger it are sought, 1 to 10; default: 3"};
constexpr SettingOption choose_option{"--choose", "choose", SettingKind::number, "N",
                                      "Which of them is told note by note; default: 1, the easiest"};

std::string word_of(const Question& question, const SettingOption& option) {
    const auto found = question.run.settings.find(option.key);
    const auto* word = found == question.run.settings.end() ? nullptr : std::get_if<std::string>(&found->second);
    return word == nullptr ? "" : *word;
}

sim::score::ReadTune tune_of(Question& question) {
    const std::string named = word_of(question, tune_option);
    if (named.empty())
        throw analysis::InputError(
            "TUNE", "missing; give a file (.musicxml, .mxl, .mid, .txt) or a line such as \"D4:1 E4:1/2\"");
    sim::score::ReadTune read = sim::score::read_tune(
        named, {.name = word_of(question, part_option), .voice = word_of(question, voice_option)});
    if (question.run.settings.contains(tempo_option.key))
        read.tune =
            at_tempo(std::move(read.tune), question.number(tempo_option, 0.0, {5.0, 1000.0, "quarter notes a minute"}));
    read.tune = with_fingers(std::move(read.tune), word_of(question, fingers_option), fingers_option.option);
    return read;
}

/// Of the file's bytes, or of the line.
std::string hash_of(const std::string& named) {
    std::error_code ignored;
    return std::filesystem::exists(named, ignored) ? sim::report::file_hash(named) : sim::report::text_hash(named);
}

}  // namespace

PassageCommand::PassageCommand(CLI::App& program) {
    CLI::App& parser = add_parser(program, "passage", "Where the fingers fall and how the hand moves in a tune",
                                  "bowband passage division_bass_viol \"D4:1/2 E4 F4 G4 A4 B4 C5 D5:2\"");
    options_ = std::make_unique<RunOptions>(
        parser, "passage",
        std::initializer_list<SettingOption>{tune_option, part_option, voice_option, tempo_option, fingers_option,
                                             alternatives_option, choose_option},
        RunOptions::Asks::whole_instrument);
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.musicxml = true});
}

void PassageCommand::run() {
    Question question = options_->ask();
    constexpr double most = 10.0;
    const sim::passage::FingeringPlan plan{.alternatives = question.whole(alternatives_option, 3, {1.0, most, ""}),
                                           .weights = {}};
    const int choose = question.whole(choose_option, 1, {1.0, static_cast<double>(plan.alternatives), ""});
    output_->check();
    sim::score::ReadTune tune = tune_of(question);
    const std::vector<sim::passage::Fingering> found = find_fingerings(tune.tune, question.preset, plan);
    if (static_cast<std::size_t>(choose) > found.size())
        throw analysis::InputError(choose_option.option, "there are only " + std::to_string(found.size()) +
                                                             " ways that differ enough; choose one of them");
    const sim::report::AskedPassage asked{.run = question.run,
                                          .preset = question.preset,
                                          .tune = std::move(tune),
                                          .tune_hash = hash_of(word_of(question, tune_option)),
                                          .chosen = static_cast<std::size_t>(choose - 1)};
    output_->write(
        {.json = [&] { return passage_json(asked, found); },
         .csv = [&] { return passage_csv(asked, found); },
         .table = [&] { return passage_table(asked, found); },
         .words = [&] { return passage_in_words(asked, found); },
         .waveform = {},
         .chart = {},
         .musicxml = [&] { return fingered_musicxml(asked.tune, sim::report::passage_marks(found[asked.chosen])); },
         .sounds = {}});
}

}  // namespace cli
