// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace cli {

/// One command: its constructor tells the parser what it takes, `run` reads what was given, calls and prints.
class Command {
public:
    Command() = default;
    virtual ~Command() = default;
    Command(const Command&) = delete;
    Command& operator=(const Command&) = delete;

    /// Throws analysis::InputError for what was asked wrongly, analysis::OutputError for what can't be written.
    virtual void run() = 0;
    const CLI::App& parser() const { return *parser_; }

protected:
    /// Adds the command to the program's parser, with an example for the end of its help.
    CLI::App& add_parser(CLI::App& program, const std::string& name, const std::string& purpose,
                         const std::string& example);

private:
    CLI::App* parser_ = nullptr;
};

/// Every command of the program, in the order of its help.
std::vector<std::unique_ptr<Command>> add_commands(CLI::App& program);

/// Names of the program's commands.
std::vector<std::string> command_names(const CLI::App& program);

/// InputError for an option or argument that the parser did not know, naming the nearest it does.
void refuse_extras(const CLI::App& parser);

std::string program_version();

}  // namespace cli
