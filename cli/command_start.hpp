// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.hpp"
#include "cli/options_output.hpp"
#include "cli/options_run.hpp"

namespace cli {

/// `bowband start`: which force and which pace begin a note cleanly at one contact point.
class StartCommand final : public Command {
public:
    explicit StartCommand(CLI::App& program);
    void run() override;

private:
    std::unique_ptr<RunOptions> options_;
    std::unique_ptr<OutputOptions> output_;
};

}  // namespace cli
