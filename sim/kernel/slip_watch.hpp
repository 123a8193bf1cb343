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
    explicit SlipWatch(double sample_rate) : time_step_(1.0 / sample_rate) {}

    /// slip m/s, bow over string; full m/s.  True where a slip has just ended.
    bool see(long step, double slip, double full);

    const Slip& slip() const { return now_; }  ///< the one that lasts, or the last one
    bool slips() const { return on_; }         ///< one lasts

private:
    double time_step_;
    Slip now_;
    bool on_ = false;
};

}  // namespace sim::kernel
