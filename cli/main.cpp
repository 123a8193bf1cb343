// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/errors.hpp"
#include "cli/command.hpp"
#include "sim/preset_reader.hpp"

#include <CLI/CLI.hpp>

#include <iostream>

namespace {

constexpr int could_not = 1;
constexpr int asked_wrongly = 2;

int complain(const std::string& what, int exit_code) {
    std::cerr << "bowband: " << sim::one_line(what) << std::endl;
    return exit_code;
}

void run_chosen(const CLI::App& program, const std::vector<std::unique_ptr<cli::Command>>& commands) {
    for (const auto& command : commands) {
        if (!command->parser().parsed()) continue;
        cli::refuse_extras(command->parser());
        command->run();
        return;
    }
    cli::refuse_extras(program);
    throw analysis::InputError("command", "none given; give one of: " + sim::listed(cli::command_names(program)) +
                                              " (bowband --help tells more)");
}

std::string said_where(const CLI::App& program) {
    const auto chosen = program.get_subcommands();
    return (chosen.empty() ? "bowband" : "bowband " + chosen.front()->get_name()) + " --help tells what it takes";
}

int run(CLI::App& program, int argc, char** argv) {
    const auto commands = cli::add_commands(program);
    try {
        program.parse(argc, argv);
        run_chosen(program, commands);
        return 0;
    } catch (const CLI::Success& wish) {  // help, version
        return program.exit(wish);
    } catch (const CLI::ArgumentMismatch& error) {
        const std::string what = error.what();
        return complain(what.substr(0, what.find(':')) + ": takes one value, given once; " + said_where(program),
                        asked_wrongly);
    } catch (const CLI::ParseError& error) {
        return complain(std::string(error.what()) + "; " + said_where(program), asked_wrongly);
    } catch (const analysis::InputError& error) {
        return complain(error.what(), asked_wrongly);
    }
}

}  // namespace

int main(int argc, char** argv) {
    try {
        CLI::App program{"How a bow must move along a bowed string: where it speaks, keeps its tone, and why.",
                         "bowband"};
        program.require_subcommand(0, 1);
        program.allow_extras();
        program.set_version_flag("--version", "bowband " + cli::program_version(), "Print the version");
        program.footer(
            "bowband COMMAND --help tells what a command takes, with an example.\n"
            "Exit: 0 done, 1 could not, 2 asked wrongly.");
        return run(program, argc, argv);
    } catch (const std::bad_alloc&) {
        return complain("not enough memory", could_not);
    } catch (const std::exception& error) {
        return complain(error.what(), could_not);
    }
}
