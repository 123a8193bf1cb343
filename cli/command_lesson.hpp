// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.hpp"
#include "cli/options_output.hpp"
#include "cli/options_run.hpp"

namespace cli {

/// `bowband lesson`: a page to hand out, with the string, the bow's places, charts and sounds in one file.
class LessonCommand final : public Command {
public:
    explicit LessonCommand(CLI::App& program);
    void run() override;

private:
    std::unique_ptr<RunOptions> options_;
    std::unique_ptr<OutputOptions> output_;
};

}  // namespace cli
