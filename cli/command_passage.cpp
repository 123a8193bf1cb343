// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_passage.hpp"

#include "analysis/audio_file.hpp"
#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "sim/passage/fingering.hpp"
#include "sim/report/passage_report.hpp"
#include "sim/score/change_tune.hpp"
#include "sim/score/shipped_tunes.hpp"
#include "sim/sound/passage_takes.hpp"

#include <CLI/CLI.hpp>

#include <filesystem>

namespace cli {
namespace {

constexpr SettingOption tune_option{"TUNE", "tune", SettingKind::word, "",
                                    "A tune: one that comes with the program (bass_study, treble_study); MusicXML "
                                    "(.musicxml, .xml, .mxl), MIDI (.mid), or words, in a file (.txt) "
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

constexpr SettingOption bow_option{"--bow", "bow", SettingKind::word, "yes|no",
                                   "Whether the bow's way is worked out too, which takes seconds; default: yes"};
constexpr SettingOption travel_option{"--bow-travel-mm-s", "bow_travel_mm_s", SettingKind::number, "V",
                                      "How fast the bow may move along the string as it bows; default: 30"};
constexpr SettingOption lifted_option{"--bow-lifted-mm-s", "bow_lifted_mm_s", SettingKind::number, "V",
                                      "How fast in rests, lifted; default: 150"};

constexpr const char* words_help =
    "A tune in words (in quotes, or in a .txt file):\n"
    "  D4:1 E4:1/2 r:1 F#4:2      notes and rests (r) with their length in quarter notes; without one, the last given\n"
    "  D5:1,string=2,finger=4     on this string, by this finger (0 for open); either may be left out\n"
    "  tempo=72 beats=3/4 dynamic=mf upbeat=1\n"
    "                             from here on: quarter notes a minute, metre, loudness; before the first note: how "
    "many\n"
    "                             quarter notes of its bar there are\n\n";

constexpr double found_until = 0.75;  // of the work, for the progress bar

std::string word_of(const Question& question, const SettingOption& option) {
    const auto found = question.run.settings.find(option.key);
    const auto* word = found == question.run.settings.end() ? nullptr : std::get_if<std::string>(&found->second);
    return word == nullptr ? "" : *word;
}

sim::score::ReadTune tune_of(Question& question) {
    const std::string named = sim::score::tune_place(word_of(question, tune_option));
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

/// Is the bow asked for?
bool bow_asked(Question& question) {
    question.note_usual(bow_option.key, std::string("yes"));
    const std::string word = word_of(question, bow_option);
    if (word != "yes" && word != "no") throw analysis::InputError(bow_option.option, "must be yes or no, is " + word);
    return word == "yes";
}

sim::passage::BowPlan bow_plan(Question& question) {
    sim::passage::BowPlan plan;
    const Question::Allowed speeds{0.1, 1000.0, "mm/s"};
    const auto speed = [&](const SettingOption& option, double usual) {
        return analysis::metres_from_mm(question.number(option, analysis::mm_from_metres(usual), speeds));
    };
    plan.travel = speed(travel_option, plan.travel);
    plan.lifted_travel = speed(lifted_option, plan.lifted_travel);
    ask_grid(question, plan.grid);
    return plan;
}

/// The bow's way and its sounds, where they are asked for.
struct Bowed {
    std::optional<sim::report::BowedPassage> passage;
    sim::sound::PassageTakes takes;

    const sim::report::BowedPassage* get() const { return passage ? &*passage : nullptr; }
};

Bowed bow_it(const sim::report::AskedPassage& asked, const sim::passage::Fingering& fingering,
             const sim::passage::BowPlan& plan, bool with_sound, const sim::Workers& workers) {
    Bowed bowed;
    bowed.passage = {find_passage(asked.tune.tune, fingering, asked.preset, plan, part_of(workers, {0.0, found_until})),
                     {}};
    const sim::Workers rest = part_of(workers, {found_until, 1.0});
    if (with_sound) {
        sim::sound::HeardPassage heard = sim::sound::hear_passage(bowed.passage->bow, rest);
        bowed.passage->played = std::move(heard.played);
        bowed.takes = std::move(heard.takes);
    } else {
        bowed.passage->played = simulate(bowed.passage->bow, rest);
    }
    return bowed;
}

auto filler(const analysis::Signal& sound) {
    return [&sound](const analysis::OutputFile& file) {
        analysis::fill_audio(file, {.channels = {sound.samples}, .sample_rate = sound.sample_rate});
    };
}

}  // namespace

PassageCommand::PassageCommand(CLI::App& program) {
    CLI::App& parser = add_parser(program, "passage", "Where the fingers fall and how the bow moves in a tune",
                                  "bowband passage treble_viol treble_study --contact-points 6 --forces 3");
    parser.footer(words_help + parser.get_footer());
    options_ = std::make_unique<RunOptions>(
        parser, "passage",
        std::initializer_list<SettingOption>{tune_option, part_option, voice_option, tempo_option, fingers_option,
                                             alternatives_option, choose_option, bow_option, travel_option,
                                             lifted_option, contact_points_option, forces_option},
        RunOptions::Asks::whole_instrument);
    output_ = std::make_unique<OutputOptions>(
        parser, OutputOptions::Kinds{.chart = true, .wav_folder = true, .musicxml = true});
}

void PassageCommand::run() {
    Question question = options_->ask();
    constexpr double most = 10.0;
    const sim::passage::FingeringPlan plan{.alternatives = question.whole(alternatives_option, 3, {1.0, most, ""}),
                                           .weights = {}};
    const int choose = question.whole(choose_option, 1, {1.0, static_cast<double>(plan.alternatives), ""});
    const bool with_bow = bow_asked(question);
    const sim::passage::BowPlan bow = bow_plan(question);
    if (!with_bow && (output_->wants_chart() || output_->wants_wav()))
        throw analysis::InputError(bow_option.option, "must be yes for --chart and --wav");
    output_->check();
    sim::score::ReadTune tune = tune_of(question);
    const std::vector<sim::passage::Fingering> found = find_fingerings(tune.tune, question.preset, plan);
    if (static_cast<std::size_t>(choose) > found.size())
        throw analysis::InputError(choose_option.option, "there are only " + std::to_string(found.size()) +
                                                             " ways that differ enough; choose one of them");
    const sim::report::AskedPassage asked{.run = question.run,
                                          .preset = question.preset,
                                          .tune = std::move(tune),
                                          .tune_hash = hash_of(sim::score::tune_place(word_of(question, tune_option))),
                                          .chosen = static_cast<std::size_t>(choose - 1)};
    Bowed bowed;
    if (with_bow) {
        Progress progress(output_->quiet());
        bowed = bow_it(asked, found[asked.chosen], bow, output_->wants_wav(), progress.workers(question.workers));
    }
    output_->write(
        {.json = [&] { return passage_json(asked, found, bowed.get()); },
         .csv = [&] { return passage_csv(asked, found, bowed.get()); },
         .table = [&] { return passage_table(asked, found, bowed.get()); },
         .words =
             [&] {
                 return passage_in_words(asked, found, bowed.get()) +
                        (output_->wants_wav() ? std::string("\n") + listening_caution : "");
             },
         .waveform = {},
         .chart = [&](const auto& file) { draw_passage_chart(file, asked, found[asked.chosen], *bowed.passage); },
         .musicxml =
             [&] {
                 return fingered_musicxml(asked.tune, sim::report::passage_marks(found[asked.chosen], bowed.get()));
             },
         .sounds = {{"bow_left_behind.wav", filler(bowed.takes.left_behind)},
                    {"bow_follows.wav", filler(bowed.takes.follows)}}});
}

}  // namespace cli
