// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/slip_watch.hpp"

namespace sim::kernel {

namespace {

constexpr double begins_over = 0.25;  // of the full slip speed
constexpr double ends_under = 0.10;

}  // namespace

bool SlipWatch::see(long step, double slip, double full) {
    const double time = static_cast<double>(step) * time_step_;
    if (!on_ && slip > begins_over * full) {
        on_ = true;
        now_ = {.start = time};
    }
    if (!on_) return false;
    now_.distance += slip * time_step_;
    if (slip >= ends_under * full) return false;
    on_ = false;
    now_.end = time;
    return true;
}

}  // namespace sim::kernel
