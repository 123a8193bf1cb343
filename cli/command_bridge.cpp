// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_bridge.hpp"

#include "analysis/checked_write.hpp"
#include "analysis/errors.hpp"
#include "cli/chart_calls.hpp"
#include "cli/setting_text.hpp"
#include "sim/preset_bridge.hpp"
#include "sim/preset_reader.hpp"
#include "sim/report/bridge_report.hpp"
#include "sim/report/run_record.hpp"

#include <CLI/CLI.hpp>

#include <cmath>

namespace cli {
namespace {

constexpr SettingOption range_option{"--range-hz", "range_hz", SettingKind::span, "A:B",
                                     "Frequencies to fit; default: those of the file, 20 to 10000 at the most"};

sim::HzRange range_from(const std::string& text) {
    const sim::report::SettingValue value = setting_from(text, range_option);
    const auto* span = std::get_if<sim::report::Span>(&value);
    constexpr double lowest = 5.0;
    constexpr double highest = 20000.0;
    if (span == nullptr || !(span->from >= lowest && span->to <= highest && span->from < span->to))
        throw analysis::InputError(
            range_option.option, "must be A:B from 5 to 20000 Hz, such as 60:4000, is \"" + sim::one_line(text) + "\"");
    return {span->from, span->to};
}

int modes_from(const std::string& text) {
    const double count = number_from(text, "--modes");
    if (count != std::floor(count) || count < 1.0 || count > sim::most_fitted_modes)
        throw analysis::InputError("--modes", "must be a whole number from 1 to " +
                                                  std::to_string(sim::most_fitted_modes) + ", is " +
                                                  sim::number_text(count));
    return static_cast<int>(count);
}

double scale_from(const std::string& text) {
    const double scale = number_from(text, "--scale");
    if (scale == 0.0 || std::abs(scale) < 1e-12 || std::abs(scale) > 1e12)
        throw analysis::InputError(
            "--scale", "must be m/s per N s for 1 in the file, 1e-12 to 1e12 in size, is " + sim::number_text(scale));
    return scale;
}

/// A new preset file, or the reason why it can't be one.
std::filesystem::path new_preset_place(const std::string& save) {
    std::filesystem::path place(save);
    std::error_code ignored;
    if (place.extension() != ".json")
        throw analysis::InputError("--save " + sim::one_line(save), "the file's name must end in .json");
    if (std::filesystem::exists(place, ignored))
        throw analysis::InputError("--save " + sim::one_line(save), "is already there; give the name of a new file");
    return place;
}

}  // namespace

BridgeCommand::BridgeCommand(CLI::App& program) {
    CLI::App& parser = add_parser(program, "bridge", "Modes fitted to a measured driving-point admittance of a bridge",
                                  "bowband bridge example_bridge.csv --range-hz 60:3000");
    parser
        .add_option(
            "FILE", file_,
            "Table (CSV) with hz and real, imag (m/s/N), or magnitude (m/s/N) or magnitude_db with phase_deg or "
            "phase_rad; or an impulse response (.wav, one channel): velocity from the moment of a unit impulse")
        ->type_name("");
    parser.add_option("--modes", modes_, "Modes in the range, 1 to 40; default: as many as lower the error, up to 24")
        ->type_name("N");
    parser.add_option(range_option.option, range_, range_option.help)->type_name(range_option.placeholder);
    parser
        .add_option("--scale", scale_,
                    "For impulse responses: m/s per N s that 1 (full scale) in the file stands for; default: 1")
        ->type_name("X");
    parser.add_option("--preset", preset_, "Instrument that --save puts the modes into")->type_name("PRESET");
    parser.add_option("--save", save_, "Write the preset with these modes as a new file")->type_name("NEW.json");
    output_ = std::make_unique<OutputOptions>(parser, OutputOptions::Kinds{.chart = true});
}

void BridgeCommand::run() {
    if (file_.empty()) throw analysis::InputError("FILE", "missing; give a measured admittance (.csv or .wav)");
    if (preset_.has_value() != save_.has_value())
        throw analysis::InputError(preset_ ? "--preset" : "--save", "needs the other of --preset and --save too");
    sim::report::AskedBridge asked{
        .version = program_version(), .file = file_, .file_hash = {}, .scale = {}, .plan = {}};
    if (modes_) asked.plan.modes = modes_from(*modes_);
    if (range_) asked.plan.range = range_from(*range_);
    if (scale_) asked.scale = scale_from(*scale_);
    std::optional<analysis::OutputFile> saved;
    output_->check(save_ ? std::vector<std::string>{*save_} : std::vector<std::string>{});
    sim::Preset preset;
    if (save_) {
        preset = sim::find_preset(*preset_);
        saved.emplace(new_preset_place(*save_));
    }
    const std::filesystem::path file = sim::find_measurement(file_);
    const sim::MeasuredBridge measured = sim::read_measured_bridge(file, asked.scale);
    const sim::BridgeFit fit = sim::fit_bridge(measured, asked.plan, sim::one_line(file_));
    asked.file_hash = sim::report::file_hash(file);
    if (saved) {
        const std::string name = std::filesystem::path(*save_).stem().string();
        const std::string measured_name = file.filename().string();
        analysis::write_bytes(*saved, preset_text(sim::with_bridge(preset, name, fit, measured_name)));
    }
    output_->write({.json = [&] { return bridge_json(asked, fit); },
                    .csv = [&] { return sim::report::bridge_csv(fit); },
                    .table = [&] { return bridge_table(asked, fit); },
                    .words = [&] { return sim::report::bridge_in_words(fit); },
                    .waveform = {},
                    .chart = [&](const auto& place) { draw_bridge_chart(place, asked, measured, fit); },
                    .sounds = {}});
    if (saved) saved->commit();
}

}  // namespace cli
