// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.hpp"
#include "cli/options_output.hpp"
#include "cli/options_run.hpp"

namespace cli {

/// `bowband gauges`: candidates for one string side by side, the band first, or a whole set of strings.
class GaugesCommand final : public Command {
public:
    explicit GaugesCommand(CLI::App& program);
    void run() override;

private:
    std::unique_ptr<RunOptions> options_;
    std::unique_ptr<OutputOptions> output_;
};

}  // namespace cli
