// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/slip_watch.hpp"

namespace sim::kernel {

namespace {

constexpr double begins_over = 0.25;  // of the full slip speed
constexpr double ends_under = 0.10;

}  // namespace

void SlipWatch::see(int step, double slip, double full, bool slipping) {
    if (slipping && step >= late_) late_slipping_ += time_step_;
    if (!on_ && slip > begins_over * full) {
        on_ = true;
        now_ = {.start = step * time_step_};
    }
    if (!on_) return;
    now_.distance += slip * time_step_;
    if (slip < ends_under * full) {
        on_ = false;
        now_.end = step * time_step_;
        slips_.push_back(now_);
    }
}

void SlipWatch::finish(Record& record) {
    record.slips = std::move(slips_);
    record.slipping_since = on_ ? now_.start : -1.0;
    record.slipped_time_late = late_slipping_;
}

}  // namespace sim::kernel
