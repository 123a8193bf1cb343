// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/note.hpp"

namespace sim::kernel {

/// Notes when the bow slips in earnest: from over 25 % to under 10 % of the full slip speed.
///
/// Two levels, because sample-by-sample stick and slip chatter at a flyback's edges; a full slip is bow speed / contact
/// ratio, the ideal flyback.  A slip counts while the string runs back under the bow.
class SlipWatch {
public:
    SlipWatch(double sample_rate, int steps) : time_step_(1.0 / sample_rate), late_(steps / 2) {}

    /// slip m/s, bow over string; full m/s; slipping: any slip at all.
    void see(int step, double slip, double full, bool slipping);
    /// Hands the slips over.
    void finish(Record& record);

private:
    double time_step_;
    int late_;
    std::vector<Slip> slips_;
    Slip now_;
    bool on_ = false;
    double late_slipping_ = 0.0;
};

}  // namespace sim::kernel
