// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/peak.hpp"

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "tests/bench/peak.cpp"
#include <hwy/foreach_target.h>
//
#include <hwy/highway.h>

#include <algorithm>
#include <chrono>
#include <cstddef>

HWY_BEFORE_NAMESPACE();
namespace tests::HWY_NAMESPACE {

namespace hn = hwy::HWY_NAMESPACE;

/// `rounds` of 8 multiplications and 8 additions of whole vectors; returns operations done.
double work_hard(std::size_t rounds, float* sink) {
    const hn::CappedTag<float, 16> tag;
    using V = hn::Vec<decltype(tag)>;
    const V factor = hn::Set(tag, 0.999999F);
    const V more = hn::Set(tag, 1e-7F);
    V m0 = hn::Set(tag, 1.0F), m1 = m0, m2 = m0, m3 = m0, m4 = m0, m5 = m0;
    V a0 = m0, a1 = m0, a2 = m0, a3 = m0, a4 = m0, a5 = m0;
    for (std::size_t i = 0; i < rounds; ++i) {
        m0 = hn::Mul(m0, factor), a0 = hn::Add(a0, more);
        m1 = hn::Mul(m1, factor), a1 = hn::Add(a1, more);
        m2 = hn::Mul(m2, factor), a2 = hn::Add(a2, more);
        m3 = hn::Mul(m3, factor), a3 = hn::Add(a3, more);
        m4 = hn::Mul(m4, factor), a4 = hn::Add(a4, more);
        m5 = hn::Mul(m5, factor), a5 = hn::Add(a5, more);
    }
    const V left = hn::Add(hn::Add(hn::Add(m0, m1), hn::Add(m2, m3)), hn::Add(m4, m5));
    const V right = hn::Add(hn::Add(hn::Add(a0, a1), hn::Add(a2, a3)), hn::Add(a4, a5));
    hn::StoreU(hn::Add(left, right), tag, sink);
    return 12.0 * static_cast<double>(rounds * hn::Lanes(tag));
}

const char* own_name() { return hwy::TargetName(HWY_TARGET); }

}  // namespace tests::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace tests {

HWY_EXPORT(work_hard);
HWY_EXPORT(own_name);

double peak_operations_per_second() {
    using clock = std::chrono::steady_clock;
    alignas(64) float sink[16];
    double best = 0.0;
    for (int again = 0; again < 20; ++again) {  // the best of short turns: others share the machine
        const auto begin = clock::now();
        const double done = HWY_DYNAMIC_DISPATCH(work_hard)(2'000'000, sink);
        best = std::max(best, done / std::chrono::duration<double>(clock::now() - begin).count());
    }
    return best;
}

std::string instruction_set() { return HWY_DYNAMIC_DISPATCH(own_name)(); }

}  // namespace tests
#endif
