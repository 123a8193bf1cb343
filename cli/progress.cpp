// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/progress.hpp"

#include <unistd.h>
#include <algorithm>
#include <iostream>
#include <string>

namespace cli {
namespace {

constexpr int bar_width = 40;

}  // namespace

Progress::Progress(bool quiet) : shown_(!quiet && ::isatty(STDERR_FILENO) == 1) {}

Progress::~Progress() {
    if (percent_ >= 0) std::cerr << "\r" << std::string(bar_width + 9, ' ') << "\r" << std::flush;
}

sim::Workers Progress::workers(sim::Workers asked) {
    if (shown_) asked.progress = [this](double share) { show(share); };
    return asked;
}

void Progress::show(double share) {
    const int percent = std::clamp(static_cast<int>(100.0 * share), 0, 100);
    if (percent == percent_) return;
    percent_ = percent;
    const auto done = static_cast<std::size_t>(percent * bar_width / 100);
    std::cerr << "\r[" << std::string(done, '#') << std::string(bar_width - done, '.') << "] " << percent << " %"
              << std::flush;
}

}  // namespace cli
