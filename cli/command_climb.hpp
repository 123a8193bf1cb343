// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.hpp"
#include "cli/options_output.hpp"
#include "cli/options_run.hpp"

namespace cli {

/// `bowband climb`: how the bow must move as the stops go up one string, and what becomes of a bow left behind.
class ClimbCommand final : public Command {
public:
    explicit ClimbCommand(CLI::App& program);
    void run() override;

private:
    std::unique_ptr<RunOptions> options_;
    std::unique_ptr<OutputOptions> output_;
};

}  // namespace cli
