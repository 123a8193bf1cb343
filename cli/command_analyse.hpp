// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.hpp"
#include "cli/options_output.hpp"

#include <optional>

namespace cli {

/// `bowband analyse`: what a recording says.
class AnalyseCommand final : public Command {
public:
    explicit AnalyseCommand(CLI::App& program);
    void run() override;

private:
    std::string file_;
    std::optional<std::string> reference_;
    std::optional<std::string> temperament_;
    std::optional<std::string> note_;
    std::optional<std::string> range_;
    std::unique_ptr<OutputOptions> output_;
};

}  // namespace cli
