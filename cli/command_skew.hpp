// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.hpp"
#include "cli/options_output.hpp"
#include "cli/options_run.hpp"

namespace cli {

/// `bowband skew`: what a bow that is not parallel to the bridge costs.
class SkewCommand final : public Command {
public:
    explicit SkewCommand(CLI::App& program);
    void run() override;

private:
    std::unique_ptr<RunOptions> options_;
    std::unique_ptr<OutputOptions> output_;
};

}  // namespace cli
