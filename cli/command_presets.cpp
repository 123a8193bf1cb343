// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_presets.hpp"

#include "analysis/errors.hpp"
#include "analysis/output_file.hpp"
#include "sim/preset.hpp"
#include "sim/preset_reader.hpp"
#include "sim/report/presets_report.hpp"

#include <CLI/CLI.hpp>

namespace cli {

PresetsCommand::PresetsCommand(CLI::App& program) {
    CLI::App& parser = add_parser(program, "presets", "Instruments: list, check, show, start a new one",
                                  "bowband presets --check division_bass_viol");
    parser.add_option("--check", check_, "Read a preset (file or name) and say whether it is in order")
        ->type_name("PRESET");
    parser.add_option("--show", show_, "Print a preset whole, as JSON")->type_name("PRESET");
    parser.add_option("--new", new_, "Write a new preset file, a copy of --from, to change")->type_name("FILE");
    parser.add_option("--from", from_, "Where --new starts")->type_name("PRESET");
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{});
}

void PresetsCommand::run() {
    const int wishes = (check_ ? 1 : 0) + (show_ ? 1 : 0) + (new_ ? 1 : 0);
    if (wishes > 1) throw analysis::InputError("presets", "give one of --check, --show, --new");
    if (from_ && !new_) throw analysis::InputError("--from", "belongs to --new FILE; give both");
    if (check_)
        check();
    else if (show_)
        show();
    else if (new_)
        start_new();
    else
        list();
}

void PresetsCommand::list() const {
    output_->check();
    std::vector<sim::Preset> presets;
    for (const std::filesystem::path& file : sim::shipped_presets()) presets.push_back(sim::read_preset(file));
    if (presets.empty()) throw analysis::OutputError("presets", "no shipped preset was found");
    output_->write({.json = [&] { return sim::report::presets_json(presets); },
                    .csv = [&] { return sim::report::presets_csv(presets); },
                    .table = [&] { return sim::report::presets_table(presets); },
                    .words = [&] { return sim::report::presets_cautions(presets); },
                    .waveform = {},
                    .chart = {},
                    .sounds = {}});
}

void PresetsCommand::check() const {
    output_->check();
    const std::vector<sim::Preset> presets{sim::find_preset(*check_)};
    for (const sim::PresetString& string : presets.front().strings) sim::open_string(presets.front(), string);
    output_->write({.json = [&] { return sim::report::presets_json(presets); },
                    .csv = [&] { return sim::report::presets_csv(presets); },
                    .table = [&] { return sim::report::presets_table(presets) + "\nThis preset is in order.\n"; },
                    .words = [&] { return sim::report::presets_cautions(presets); },
                    .waveform = {},
                    .chart = {},
                    .sounds = {}});
}

void PresetsCommand::show() const { print(sim::preset_text(sim::find_preset(*show_))); }

void PresetsCommand::start_new() const {
    if (!from_) throw analysis::InputError("--new", "needs --from PRESET to start from; bowband presets lists them");
    std::filesystem::path file(*new_);
    if (file.extension() != ".json")
        throw analysis::InputError("--new " + sim::one_line(*new_), "the file's name must end in .json");
    std::error_code ignored;
    if (std::filesystem::exists(file, ignored))
        throw analysis::InputError("--new " + sim::one_line(*new_), "is already there; give the name of a new file");
    sim::Preset preset = sim::find_preset(*from_);
    preset.remark = "started from " + preset.name;
    preset.name = file.stem().string();
    analysis::write_text_file(file, sim::preset_text(preset));
    if (!output_->quiet())
        print("written: " + file.string() + "; change it, then: bowband presets --check " + file.string() + "\n");
}

}  // namespace cli
