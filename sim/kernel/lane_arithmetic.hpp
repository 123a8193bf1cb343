// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace sim::kernel {

/// While one lives, this thread's arithmetic takes numbers too small to be normal for 0 and never makes any: dying
/// vibrations would slow the processor down, and not every instruction set keeps such numbers.
class LaneArithmetic {
public:
    LaneArithmetic();
    ~LaneArithmetic();
    LaneArithmetic(const LaneArithmetic&) = delete;
    LaneArithmetic& operator=(const LaneArithmetic&) = delete;

private:
    unsigned long before_;
};

}  // namespace sim::kernel
