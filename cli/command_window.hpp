// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.hpp"
#include "cli/options_output.hpp"
#include "cli/options_run.hpp"
#include "sim/batch.hpp"

namespace sim {
struct WindowPlan;
}
namespace sim::report {
struct Asked;
}

namespace cli {

/// `bowband window`: where one note can be bowed, or with one contact point what that place is worth.
class WindowCommand final : public Command {
public:
    explicit WindowCommand(CLI::App& program);
    void run() override;

private:
    void whole_window(const sim::report::Asked& asked, const sim::WindowPlan& plan, const sim::Workers& workers) const;
    void one_place(const sim::report::Asked& asked, const sim::WindowPlan& plan, double contact_point,
                   const sim::Workers& workers) const;

    std::unique_ptr<RunOptions> options_;
    std::unique_ptr<OutputOptions> output_;
};

}  // namespace cli
