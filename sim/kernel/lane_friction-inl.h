// SPDX-License-Identifier: GPL-3.0-or-later
// What the rosin does in a sample, as in rosin.cpp and heat.cpp.  Included once for every instruction set.
#if defined(BOWBAND_LANE_FRICTION_INL) == defined(HWY_TARGET_TOGGLE)
#ifdef BOWBAND_LANE_FRICTION_INL
#undef BOWBAND_LANE_FRICTION_INL
#else
#define BOWBAND_LANE_FRICTION_INL
#endif

#include "sim/kernel/lane_vectors-inl.h"

HWY_BEFORE_NAMESPACE();
namespace sim::kernel::HWY_NAMESPACE {

inline constexpr int newton_steps = 12;  // always all of them; on notes they end within rounding

/// What a point is asked.
struct Rubbing {
    Row free_slip;   // m/s
    Row yield;       // m/s per N
    Row grip;        // its reciprocal
    Row bow_force;   // N
    Row lengthwise;  // m/s
};

/// What it answers.
struct Rubbed {
    Row force;  // N
    Row slip;   // m/s
    Mask slips;
};

/// Sliding friction `sliding`, unless it sticks.
HWY_INLINE Rubbed stick_or_slide(const Rubbing& r, const Mask& sticks, const Row& sliding) {
    Rubbed out;
    const Row needed = -(r.free_slip * r.grip);
    out.force = choose(sticks, needed, with_sign(sliding, needed));
    out.slip = unless(sticks, r.free_slip + r.yield * out.force);
    out.slips = without(all(0.0F) <= all(0.0F), sticks);
    return out;
}

/// As in rosin.cpp; the fixed number of steps from below ends close to the root.
HWY_INLINE Rubbed rub_askew(const Rubbing& r, const Row& friction) {
    const Row offset = size(r.free_slip);
    const Row s2 = r.lengthwise * r.lengthwise;
    const Row pull = r.yield * friction;
    Row u = positive(offset - pull);
    for (int step = 0; step < newton_steps; ++step) {
        const Row square = u * u + s2;
        const Row inverse = all(1.0F) / root(square);
        const Row bend = all(1.0F) + pull * s2 * inverse / square;
        u = u + (offset - u - pull * u * inverse) / bend;
    }
    Rubbed out;
    const Row across = friction * u / root(u * u + s2);
    out.force = with_sign(across, -r.free_slip);
    out.slip = r.free_slip + r.yield * out.force;
    out.slips = r.lengthwise < u;
    return out;
}

/// A coefficient that holds for sticking and sliding alike.
template <bool askew>
HWY_INLINE Rubbed rub_evenly(const Rubbing& r, const Row& coefficient) {
    const Row friction = coefficient * r.bow_force;
    if constexpr (askew) return rub_askew(r, friction);
    return stick_or_slide(r, size(r.free_slip) * r.grip <= friction, friction);
}

/// Heat that layer and branches give in this sample, and what they take up per kelvin.
struct Warming {
    Row inflow;
    Row per_sum;  // 1 / (W/K)
    Row left[LaneHeat::branches];
};

HWY_INLINE Warming begin_heat(const LaneHeat& h, const LanePointRows& p, const Row& slip_speed) {
    constexpr std::size_t n = LaneHeat::branches;
    Warming out;
    const Row renewed = all(h.renewal_per_slip) * slip_speed;
    // 1 / (1 + pull + renewed) of all branches from one division
    Row term[n];
    Row before[n];
    for (std::size_t i = 0; i < n; ++i) {
        term[i] = all(h.pull_once[i]) + renewed;
        before[i] = i == 0 ? term[0] : before[i - 1] * term[i];
    }
    Row inverse = all(1.0F) / before[n - 1];
    for (std::size_t i = n; i-- > 1;) {
        out.left[i] = inverse * before[i - 1];
        inverse = inverse * term[i];
    }
    out.left[0] = inverse;
    Row sum = all(h.sum) + all(h.sum_per_renewal) * renewed;
    out.inflow = all(h.layer) * load(p.layer);
    for (std::size_t i = 0; i < n; ++i) {
        sum = sum - all(h.gone[i]) * out.left[i];
        out.inflow = out.inflow + (all(h.kept[i]) * load(p.string_side[i]) +
                                   all(h.conductance[i]) * (out.left[i] * load(p.hair_side[i])));
    }
    out.per_sum = all(1.0F) / sum;
    return out;
}

HWY_INLINE void finish_heat(const LaneHeat& h, LanePointRows& p, const Warming& w, const Row& power) {
    const Row layer = (w.inflow + power) * w.per_sum;
    store(layer, p.layer);
    for (std::size_t i = 0; i < LaneHeat::branches; ++i) {
        const Row side = load(p.string_side[i]);
        store(side + all(h.follow[i]) * (layer - side), p.string_side[i]);
        store((load(p.hair_side[i]) + all(h.pull[i]) * layer) * w.left[i], p.hair_side[i]);
    }
}

/// mu at a temperature, from the table.
HWY_INLINE Row coefficient_when(const LaneContact& contact, const Row& temperature) {
    const Row place = positive(temperature * all(contact.steps_per_kelvin));
    const Row last = all(contact.last_step);
    return between(contact.table.data(), choose(place < last, place, last));
}

/// Heun's rule, as in rosin.cpp; where nothing slipped the second look changes nothing.
template <bool askew>
struct ThermalLaw {
    HWY_INLINE static Row speed(const Row& slip, const Row& lengthwise) {
        if constexpr (askew) return root(slip * slip + lengthwise * lengthwise);
        return size(slip);
    }
    HWY_INLINE static Rubbed rub(const LaneContact& contact, LanePointRows& p, const Rubbing& r) {
        const Row half = all(0.5F);
        const Row owed = load(p.owed);
        const Warming w = begin_heat(contact.heat, p, speed(load(p.slip), r.lengthwise));
        Row mu = coefficient_when(contact, (w.inflow + (owed + half * load(p.power))) * w.per_sum);
        Rubbed out = rub_evenly<askew>(r, mu);
        const Row crowding = contact.crowded ? r.bow_force : all(1.0F);
        const Row given = owed + half * (mu * speed(out.slip, r.lengthwise) * crowding);
        mu = coefficient_when(contact, (w.inflow + given) * w.per_sum);
        const Row guess = given - owed;
        out = rub_evenly<askew>(r, mu);
        const Row power = mu * speed(out.slip, r.lengthwise) * crowding;
        finish_heat(contact.heat, p, w, given);
        store(power, p.power);
        store(power - guess, p.owed);
        return out;
    }
};

template <bool askew>
struct CoulombLaw {
    HWY_INLINE static Rubbed rub(const LaneContact& contact, LanePointRows& p, const Rubbing& r) {
        const Row sliding = all(contact.sliding_coefficient) * r.bow_force;
        if constexpr (askew) return rub_askew(r, sliding);
        // a stick holds to the greater force; a slip holds while there is a sliding speed
        const Row greatest = all(contact.static_coefficient) * r.bow_force;
        const Mask slipped = all(0.5F) < load(p.slips);
        const Row bears = choose(slipped & (sliding < greatest), sliding, greatest);
        return stick_or_slide(r, size(r.free_slip) * r.grip <= bears, sliding);
    }
};

/// Load line against curve, by Newton's steps from the right: see rosin.cpp.
struct DoubleExponentialLaw {
    HWY_INLINE static Rubbed rub(const LaneContact&, LanePointRows& p, const Rubbing& r) {
        const Row offset = size(r.free_slip);
        const Mask slipped = all(0.5F) < load(p.slips);
        Mask sticks = without(offset * r.grip <= all(1.2F) * r.bow_force, slipped);
        Row u = offset;
        Row slow, quick;
        const auto follow_curve = [&]() HWY_ATTR {
            slow = falling_exponential(all(10.0F) * u);
            const Row two = slow * slow;
            const Row four = two * two;
            quick = four * four * two;
            slow = all(0.45F) * slow;
            quick = all(0.4F) * quick;
        };
        for (int step = 0; step < newton_steps; ++step) {
            follow_curve();
            const Row h = (offset - u) * r.grip - r.bow_force * (all(0.35F) + slow + quick);
            const Row slope = r.bow_force * (all(10.0F) * slow + all(100.0F) * quick) - r.grip;
            sticks = sticks | (all(0.0F) <= slope);
            u = u - h / slope;
            sticks = sticks | (u <= all(0.0F));
            u = choose(sticks, offset, u);
        }
        follow_curve();
        return stick_or_slide(r, sticks, r.bow_force * (all(0.35F) + slow + quick));
    }
};

/// The same in closed form: w = v0 + u solves w^2 - b w + c = 0.
struct HyperbolaLaw {
    HWY_INLINE static Rubbed rub(const LaneContact& contact, LanePointRows& p, const Rubbing& r) {
        const Row offset = size(r.free_slip);
        const Row corner = all(contact.corner_speed);
        const Row drop = all(contact.static_coefficient - contact.sliding_coefficient);
        const Mask slipped = all(0.5F) < load(p.slips);
        Mask sticks = without(offset * r.grip <= all(contact.static_coefficient) * r.bow_force, slipped);
        const Row pull = r.yield * r.bow_force;
        const Row b = offset + corner - pull * all(contact.sliding_coefficient);
        const Row discriminant = b * b - all(4.0F) * pull * drop * corner;
        const Row w = all(0.5F) * (b + root(positive(discriminant)));
        sticks = sticks | (discriminant < all(0.0F)) | (w <= corner);
        const Row mu = all(contact.sliding_coefficient) + drop * corner / w;
        return stick_or_slide(r, sticks, mu * r.bow_force);
    }
};

}  // namespace sim::kernel::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#endif
