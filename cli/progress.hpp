// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/batch.hpp"

namespace cli {

/// A bar on stderr while it lives, if that is a terminal and nobody asked for quiet; nothing otherwise.
class Progress {
public:
    explicit Progress(bool quiet);
    ~Progress();
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;

    /// The same workers, that tell this bar.
    sim::Workers workers(sim::Workers asked);

private:
    void show(double share);

    bool shown_;
    int percent_ = -1;
};

}  // namespace cli
