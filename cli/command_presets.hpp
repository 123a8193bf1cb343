// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.hpp"
#include "cli/options_output.hpp"

#include <optional>

namespace cli {

/// `bowband presets`: lists, checks, shows instruments, and starts a new one from another.
class PresetsCommand final : public Command {
public:
    explicit PresetsCommand(CLI::App& program);
    void run() override;

private:
    void list() const;
    void check() const;
    void show() const;
    void start_new() const;

    std::optional<std::string> check_;
    std::optional<std::string> show_;
    std::optional<std::string> new_;
    std::optional<std::string> from_;
    std::unique_ptr<OutputOptions> output_;
};

}  // namespace cli
