// SPDX-License-Identifier: GPL-3.0-or-later
// A row of lanes as several vectors.  Included once for every instruction set (Highway's foreach_target).
#if defined(BOWBAND_LANE_VECTORS_INL) == defined(HWY_TARGET_TOGGLE)
#ifdef BOWBAND_LANE_VECTORS_INL
#undef BOWBAND_LANE_VECTORS_INL
#else
#define BOWBAND_LANE_VECTORS_INL
#endif

#include "sim/kernel/lane_work.hpp"

#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace sim::kernel::HWY_NAMESPACE {

namespace hn = hwy::HWY_NAMESPACE;

using Tag = hn::CappedTag<float, lane_count>;
using Vector = hn::Vec<Tag>;
using VectorMask = hn::Mask<Tag>;
inline constexpr std::size_t width = hn::MaxLanes(Tag());
inline constexpr std::size_t vectors = lane_count / width;

/// Only operations that round once, the same everywhere: + - * / sqrt, compare, select, whole numbers, gather.
struct Row {
    Vector v[vectors];
};
struct Mask {
    VectorMask m[vectors];
};

HWY_INLINE Row load(const LaneRow& row) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::Load(Tag(), row.lane + i * width);
    return out;
}
HWY_INLINE void store(const Row& value, LaneRow& row) {
    for (std::size_t i = 0; i < vectors; ++i) hn::Store(value.v[i], Tag(), row.lane + i * width);
}
HWY_INLINE Row all(float value) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::Set(Tag(), value);
    return out;
}
HWY_INLINE Row operator+(const Row& a, const Row& b) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::Add(a.v[i], b.v[i]);
    return out;
}
HWY_INLINE Row operator-(const Row& a, const Row& b) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::Sub(a.v[i], b.v[i]);
    return out;
}
HWY_INLINE Row operator*(const Row& a, const Row& b) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::Mul(a.v[i], b.v[i]);
    return out;
}
HWY_INLINE Row operator/(const Row& a, const Row& b) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::Div(a.v[i], b.v[i]);
    return out;
}
HWY_INLINE Row operator-(const Row& a) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::Neg(a.v[i]);
    return out;
}
HWY_INLINE Row root(const Row& a) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::Sqrt(a.v[i]);
    return out;
}
HWY_INLINE Row size(const Row& a) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::Abs(a.v[i]);
    return out;
}
/// a's size with b's sign.
HWY_INLINE Row with_sign(const Row& a, const Row& b) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::CopySign(a.v[i], b.v[i]);
    return out;
}
HWY_INLINE Mask operator<(const Row& a, const Row& b) {
    Mask out;
    for (std::size_t i = 0; i < vectors; ++i) out.m[i] = hn::Lt(a.v[i], b.v[i]);
    return out;
}
HWY_INLINE Mask operator<=(const Row& a, const Row& b) {
    Mask out;
    for (std::size_t i = 0; i < vectors; ++i) out.m[i] = hn::Le(a.v[i], b.v[i]);
    return out;
}
HWY_INLINE Mask operator&(const Mask& a, const Mask& b) {
    Mask out;
    for (std::size_t i = 0; i < vectors; ++i) out.m[i] = hn::And(a.m[i], b.m[i]);
    return out;
}
HWY_INLINE Mask operator|(const Mask& a, const Mask& b) {
    Mask out;
    for (std::size_t i = 0; i < vectors; ++i) out.m[i] = hn::Or(a.m[i], b.m[i]);
    return out;
}
/// a and not b.
HWY_INLINE Mask without(const Mask& a, const Mask& b) {
    Mask out;
    for (std::size_t i = 0; i < vectors; ++i) out.m[i] = hn::AndNot(b.m[i], a.m[i]);
    return out;
}
HWY_INLINE Row choose(const Mask& mask, const Row& yes, const Row& no) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::IfThenElse(mask.m[i], yes.v[i], no.v[i]);
    return out;
}
HWY_INLINE Row where(const Mask& mask, const Row& yes) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::IfThenElseZero(mask.m[i], yes.v[i]);
    return out;
}
HWY_INLINE Row unless(const Mask& mask, const Row& no) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::IfThenZeroElse(mask.m[i], no.v[i]);
    return out;
}
/// 0 where a is less, or no number at all.
HWY_INLINE Row positive(const Row& a) { return where(all(0.0F) < a, a); }

/// Bit i for lane i.
HWY_INLINE std::uint32_t bits(const Mask& mask) {
    std::uint32_t out = 0;
    for (std::size_t i = 0; i < vectors; ++i) {
        std::uint8_t bytes[8] = {};  // StoreMaskBits writes whole bytes, at least one
        hn::StoreMaskBits(Tag(), mask.m[i], bytes);
        out |= (static_cast<std::uint32_t>(bytes[0]) | static_cast<std::uint32_t>(bytes[1]) << 8) << (i * width);
    }
    return out;
}

/// a, but at least 0 and at most `greatest`; 0 where a is no number.
HWY_INLINE Row within(const Row& a, const Row& greatest) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) out.v[i] = hn::Min(hn::Max(a.v[i], hn::Zero(Tag())), greatest.v[i]);
    return out;
}

using Whole = hn::RebindToSigned<Tag>;

/// table[index], index in 0 ... 31: from the registers where they are wide enough.
HWY_INLINE Vector picked(const float* table, const hn::Vec<Whole>& index) {
    if constexpr (width >= 8) {
        constexpr int last = static_cast<int>(width) - 1;
        const auto indices = hn::IndicesFromVec(Tag(), hn::And(index, hn::Set(Whole(), last)));
        const auto from = [&](std::size_t first) HWY_ATTR {
            return hn::TableLookupLanes(hn::Load(Tag(), table + first), indices);
        };
        Vector out = from(0);
        for (std::size_t first = width; first < LaneCurve::pieces; first += width) {
            const auto past = hn::Gt(index, hn::Set(Whole(), static_cast<int>(first) - 1));
            out = hn::IfThenElse(hn::RebindMask(Tag(), past), from(first), out);
        }
        return out;
    } else {
        return hn::GatherIndex(Tag(), table, index);
    }
}

/// mu at a temperature, as coefficient_on in lane_curve.cpp.
HWY_INLINE Row on_curve(const LaneCurve& curve, const Row& temperature) {
    Row ramp[LaneCurve::ramps];
    for (std::size_t r = 0; r < LaneCurve::ramps; ++r)
        ramp[r] = within(temperature - all(curve.from[r]), all(curve.wide[r])) * all(curve.per_kelvin[r]);
    const Row place = (ramp[0] + ramp[1]) + ramp[2];
    // Added to 1.5 * 2^23, a number is rounded to a whole one, which stands in its last bits: Highway's own conversion
    // looks after overflows too, at the price of a third of the time loop.
    const Vector whole = hn::Set(Tag(), 12582912.0F);
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) {
        const Vector at = hn::Min(place.v[i], hn::Set(Tag(), 31.99999F));
        const Vector piece = hn::Add(hn::Sub(at, hn::Set(Tag(), 0.5F)), whole);
        const auto index = hn::And(hn::BitCast(Whole(), piece), hn::Set(Whole(), LaneCurve::pieces - 1));
        const Vector u = hn::Sub(at, hn::Sub(piece, whole));
        const Vector low = hn::Add(picked(curve.term[0], index), hn::Mul(u, picked(curve.term[1], index)));
        const Vector middle = hn::Add(picked(curve.term[2], index), hn::Mul(u, picked(curve.term[3], index)));
        const Vector square = hn::Mul(u, u);
        const Vector high = hn::Add(middle, hn::Mul(square, picked(curve.term[4], index)));
        out.v[i] = hn::Add(low, hn::Mul(square, high));
    }
    return out;
}

/// A value and its rise to the next, from a table of both in turn, straight between: place in 0 ... last.
HWY_INLINE Row between(const float* table, const Row& place) {
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) {
        const auto step = hn::ConvertTo(Whole(), place.v[i]);
        const Vector part = hn::Sub(place.v[i], hn::ConvertTo(Tag(), step));
        const auto index = hn::Add(step, step);
        const Vector value = hn::GatherIndex(Tag(), table, index);
        out.v[i] = hn::Add(value, hn::Mul(part, hn::GatherIndex(Tag(), table + 1, index)));
    }
    return out;
}

/// exp(-x), x >= 0; 0 past 80.  2^n times a polynomial of the rest, the Taylor series of 2^f about 0 for |f| <= 1/2:
/// relative error under 3e-7.
HWY_INLINE Row falling_exponential(const Row& x) {
    const Whole whole;
    constexpr float terms[] = {1.5403530e-4F, 1.3333558e-3F, 9.6181291e-3F,
                               5.5504109e-2F, 2.4022651e-1F, 6.9314718e-1F};
    const Mask ends = all(80.0F) < x;
    const Row power = unless(ends, x) * all(-1.44269504F);
    Row out;
    for (std::size_t i = 0; i < vectors; ++i) {
        const auto n = hn::ConvertTo(whole, hn::Sub(power.v[i], hn::Set(Tag(), 0.5F)));
        const Vector f = hn::Sub(power.v[i], hn::ConvertTo(Tag(), n));
        Vector sum = hn::Set(Tag(), terms[0]);
        for (std::size_t k = 1; k < 6; ++k) sum = hn::Add(hn::Mul(sum, f), hn::Set(Tag(), terms[k]));
        sum = hn::Add(hn::Mul(sum, f), hn::Set(Tag(), 1.0F));
        const auto scale = hn::ShiftLeft<23>(hn::Add(n, hn::Set(whole, 127)));
        out.v[i] = hn::Mul(sum, hn::BitCast(Tag(), scale));
    }
    return unless(ends, out);
}

}  // namespace sim::kernel::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#endif
