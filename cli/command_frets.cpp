// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_frets.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "cli/chart_calls.hpp"
#include "cli/note_question.hpp"
#include "cli/progress.hpp"
#include "cli/setting_text.hpp"
#include "sim/preset_reader.hpp"
#include "sim/report/frets_report.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cmath>

namespace cli {
namespace {

constexpr SettingOption nut_height_option{"--height-at-nut-mm", "height_at_nut_mm", SettingKind::number, "MM",
                                          "Height of the strings over the frets at the nut; default: 0"};
constexpr SettingOption octave_height_option{
    "--height-at-octave-mm", "height_at_octave_mm", SettingKind::number, "MM",
    "The same at the octave; with it frets are moved for the sharpening of pressed strings; default: 0"};
constexpr SettingOption chromatic_option{"--chromatic-frets", "chromatic_frets", SettingKind::word, "1,6|none",
                                         "In a meantone: frets set chromatic (of 1, 3, 6, 8, 10), the others diatonic"};

sim::StringHeight height_of(Question& question) {
    constexpr double usual = 0.0;
    return {.at_nut = analysis::metres_from_mm(question.number(nut_height_option, usual, {0.0, 3.0, "mm"})),
            .at_octave = analysis::metres_from_mm(question.number(octave_height_option, usual, {0.0, 12.0, "mm"}))};
}

std::vector<double> as_numbers(const std::vector<int>& frets) { return {frets.begin(), frets.end()}; }

/// The frets named, in place of the preset's.
void choose_chromatic(Question& question) {
    sim::Preset& preset = question.preset;
    const std::string usual = preset.chromatic_frets.empty() ? "none" : list_text(as_numbers(preset.chromatic_frets));
    const auto& value = question.run.settings.try_emplace(chromatic_option.key, usual).first->second;
    const auto* text = std::get_if<std::string>(&value);
    if (text == nullptr) throw analysis::InputError(chromatic_option.option, "must be none, or frets such as 1,6");
    preset.chromatic_frets.clear();
    if (*text == "none") return;
    for (const double fret : numbers_from(*text, chromatic_option.option)) {
        const bool is_fret = fret == std::floor(fret) && fret >= 1.0 && fret <= preset.frets;
        if (!is_fret)
            throw analysis::InputError(
                chromatic_option.option,
                "must name frets from 1 to " + std::to_string(preset.frets) + ", one is " + sim::number_text(fret));
        preset.chromatic_frets.push_back(static_cast<int>(fret));
    }
    std::ranges::sort(preset.chromatic_frets);
    const auto doubled = std::ranges::unique(preset.chromatic_frets);
    preset.chromatic_frets.erase(doubled.begin(), doubled.end());
}

/// What the contact ruler shows: stops one by one, a range, or the whole board.
sim::ClimbPlan ruler_plan(Question& question) {
    sim::ClimbPlan plan;
    const auto asked = question.run.settings.find("stop_semitones");
    const bool listed = asked != question.run.settings.end() && std::holds_alternative<std::string>(asked->second);
    plan.stops = listed ? question.some_stops() : question.stops();
    plan.end = question.stop_end;
    ask_grid(question, plan.grid);
    return plan;
}

void require_something_speaks(const sim::Climb& climb) {
    if (std::ranges::none_of(climb.stops, [](const sim::ClimbStop& stop) { return stop.band.best.has_value(); }))
        throw analysis::OutputError("--ruler",
                                    "no stroke of this range speaks at any of these stops; there is nothing "
                                    "to mark");
}

}  // namespace

FretsCommand::FretsCommand(CLI::App& program) {
    CLI::App& parser =
        add_parser(program, "frets", "Where the frets lie; strips to print at true size for board and bow",
                   "bowband frets division_bass_viol --temperament sixth_comma --chromatic-frets 1 "
                   "--height-at-octave-mm 5");
    options_ = std::make_unique<RunOptions>(
        parser, "frets",
        std::initializer_list<SettingOption>{chromatic_option, nut_height_option, octave_height_option,
                                             contact_points_option, forces_option});
    const char* group = "To print at true size (.svg, or .pdf on sheets with lines to cut and join)";
    parser.add_option("--strip", strip_, "Strip with the frets to lay along the board, from the nut")
        ->type_name("FILE")
        ->group(group);
    parser
        .add_option("--ruler", ruler_,
                    "Contact ruler to lay under the strings at the bridge: band and best place at each --stop of "
                    "--string (plays them)")
        ->type_name("FILE")
        ->group(group);
    parser.add_option("--paper", paper_, "a4 or letter, lying; default: a4")->type_name("NAME")->group(group);
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{});
}

void FretsCommand::run() {
    Question question = options_->ask();
    choose_chromatic(question);
    const sim::StringHeight height = height_of(question);
    const sim::FretTable table = sim::fret_table(question.preset, height);
    std::vector<std::string> more;
    for (const auto& place : {strip_, ruler_})
        if (place) more.push_back(*place);
    require_paper(paper_);
    for (const std::string& place : more) require_strip_place(place);
    output_->check(more);
    std::optional<analysis::OutputFile> strip_file;
    std::optional<analysis::OutputFile> ruler_file;
    if (strip_) strip_file.emplace(*strip_);
    if (ruler_) ruler_file.emplace(*ruler_);
    std::optional<sim::Climb> ruler;
    if (ruler_) {
        require_force_range(question);
        const sim::ClimbPlan plan = ruler_plan(question);
        Progress progress(output_->quiet());
        ruler = sim::find_climb(question.preset, question.string, question.preset.player, plan,
                                progress.workers(question.workers));
        require_something_speaks(*ruler);
    }
    const sim::report::AskedFrets asked{.run = question.run, .preset = question.preset};
    if (strip_file) draw_fret_strip(*strip_file, asked, table, paper_);
    if (ruler_file) draw_contact_ruler(*ruler_file, asked, *ruler, paper_);
    output_->write({.json = [&] { return frets_json(asked, table, ruler); },
                    .csv = [&] { return frets_csv(asked, table); },
                    .table = [&] { return frets_table(asked, table); },
                    .words = [&] { return sim::report::frets_in_words(table, ruler); },
                    .sounds = {}});
    if (strip_file) strip_file->commit();
    if (ruler_file) ruler_file->commit();
}

}  // namespace cli
