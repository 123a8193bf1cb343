// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.hpp"
#include "cli/options_output.hpp"
#include "cli/options_run.hpp"

namespace cli {

/// `bowband match`: a recording held against an instrument's simulated strokes.
class MatchCommand final : public Command {
public:
    explicit MatchCommand(CLI::App& program);
    void run() override;

private:
    std::string file_;
    std::unique_ptr<RunOptions> options_;
    std::unique_ptr<OutputOptions> output_;
};

}  // namespace cli
