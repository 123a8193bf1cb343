// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.hpp"
#include "cli/options_output.hpp"
#include "cli/options_run.hpp"

#include <optional>

namespace cli {

/// `bowband frets`: where frets, guide fret and the semitones of the bare board lie; strips to print at true size.
class FretsCommand final : public Command {
public:
    explicit FretsCommand(CLI::App& program);
    void run() override;

private:
    std::unique_ptr<RunOptions> options_;
    std::unique_ptr<OutputOptions> output_;
    std::optional<std::string> strip_;
    std::optional<std::string> ruler_;
    std::string paper_ = "a4";
};

}  // namespace cli
