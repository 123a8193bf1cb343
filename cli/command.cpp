// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command.hpp"

#include "analysis/errors.hpp"
#include "cli/command_analyse.hpp"
#include "cli/command_bridge.hpp"
#include "cli/command_climb.hpp"
#include "cli/command_ends.hpp"
#include "cli/command_laws.hpp"
#include "cli/command_lesson.hpp"
#include "cli/command_note.hpp"
#include "cli/command_passage.hpp"
#include "cli/command_presets.hpp"
#include "cli/command_sensitivity.hpp"
#include "cli/command_skew.hpp"
#include "cli/command_speeds.hpp"
#include "cli/command_start.hpp"
#include "cli/command_window.hpp"
#include "sim/preset_reader.hpp"

#include <CLI/CLI.hpp>

namespace cli {
namespace {

std::vector<std::string> option_names(const CLI::App& parser) {
    std::vector<std::string> names;
    for (const CLI::Option* option : parser.get_options())
        for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
    return names;
}

std::string full_name(const CLI::App& parser) {
    return parser.get_parent() != nullptr ? parser.get_parent()->get_name() + " " + parser.get_name()
                                          : parser.get_name();
}

}  // namespace

std::vector<std::string> command_names(const CLI::App& program) {
    std::vector<std::string> names;
    for (const CLI::App* command : program.get_subcommands({})) names.push_back(command->get_name());
    return names;
}

std::string program_version() { return BOWBAND_VERSION; }

CLI::App& Command::add_parser(CLI::App& program, const std::string& name, const std::string& purpose,
                              const std::string& example) {
    parser_ = program.add_subcommand(name, purpose);
    parser_->allow_extras();
    parser_->set_version_flag("--version", "bowband " + program_version(), "Print the version");
    parser_->footer("Example:\n  " + example);
    parser_->get_formatter()->column_width(34);
    return *parser_;
}

std::vector<std::unique_ptr<Command>> add_commands(CLI::App& program) {
    std::vector<std::unique_ptr<Command>> commands;
    commands.push_back(std::make_unique<PresetsCommand>(program));
    commands.push_back(std::make_unique<NoteCommand>(program));
    commands.push_back(std::make_unique<WindowCommand>(program));
    commands.push_back(std::make_unique<ClimbCommand>(program));
    commands.push_back(std::make_unique<LessonCommand>(program));
    commands.push_back(std::make_unique<LawsCommand>(program));
    commands.push_back(std::make_unique<SkewCommand>(program));
    commands.push_back(std::make_unique<SensitivityCommand>(program));
    commands.push_back(std::make_unique<EndsCommand>(program));
    commands.push_back(std::make_unique<StartCommand>(program));
    commands.push_back(std::make_unique<AnalyseCommand>(program));
    commands.push_back(std::make_unique<BridgeCommand>(program));
    commands.push_back(std::make_unique<SpeedsCommand>(program));
    commands.push_back(std::make_unique<PassageCommand>(program));
    return commands;
}

void refuse_extras(const CLI::App& parser) {
    const std::vector<std::string> extras = parser.remaining();
    if (extras.empty()) return;
    const auto option = std::ranges::find_if(extras, [](const std::string& text) { return text.starts_with("-"); });
    const std::string given = option != extras.end() ? *option : extras.front();
    const bool is_option = option != extras.end();
    const std::vector<std::string> commands = command_names(parser);
    const std::vector<std::string> known = !is_option && !commands.empty() ? commands : option_names(parser);
    const std::string nearest = sim::nearest_name(given, known);
    const std::string hint = nearest.empty() ? "" : "did you mean " + nearest + "? ";
    const std::string what = is_option          ? "unknown option; "
                             : commands.empty() ? "one argument too many; "
                                                : "unknown command; ";
    const std::string list = !is_option && !commands.empty() ? "Commands: " + sim::listed(commands)
                                                             : full_name(parser) + " --help lists what it takes";
    throw analysis::InputError("\"" + sim::one_line(given) + "\"", what + hint + list);
}

}  // namespace cli
