// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/lane_arithmetic.hpp"

#if defined(__SSE2__)
#include <xmmintrin.h>
#endif

namespace sim::kernel {

namespace {

#if defined(__SSE2__)
constexpr unsigned long flushing = 0x8040;  // results to zero, operands as zero
unsigned long control() { return _mm_getcsr(); }
void set_control(unsigned long word) { _mm_setcsr(static_cast<unsigned>(word)); }
#elif defined(__aarch64__)
constexpr unsigned long flushing = 1UL << 24;
unsigned long control() {
    unsigned long word;
    __asm__ volatile("mrs %0, fpcr" : "=r"(word));
    return word;
}
void set_control(unsigned long word) { __asm__ volatile("msr fpcr, %0" ::"r"(word)); }
#else
constexpr unsigned long flushing = 0;
unsigned long control() { return 0; }
void set_control(unsigned long) {}
#endif

}  // namespace

LaneArithmetic::LaneArithmetic() : before_(control()) { set_control(before_ | flushing); }
LaneArithmetic::~LaneArithmetic() { set_control(before_); }

}  // namespace sim::kernel
