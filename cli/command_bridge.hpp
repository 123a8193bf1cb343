// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.hpp"
#include "cli/options_output.hpp"

#include <optional>

namespace cli {

/// `bowband bridge`: modes fitted to a measured admittance.
class BridgeCommand final : public Command {
public:
    explicit BridgeCommand(CLI::App& program);
    void run() override;

private:
    std::string file_;
    std::optional<std::string> modes_;
    std::optional<std::string> range_;
    std::optional<std::string> scale_;
    std::optional<std::string> preset_;
    std::optional<std::string> save_;
    std::unique_ptr<OutputOptions> output_;
};

}  // namespace cli
