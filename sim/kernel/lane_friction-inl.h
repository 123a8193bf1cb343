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

/// What a point of the hair remembers, while the time loop runs.
struct Point {
    explicit HWY_INLINE Point(const LanePointRows& rows)
        : slips(load(rows.slips)),
          slip(load(rows.slip)),
          power(load(rows.power)),
          owed(load(rows.owed)),
          layer(load(rows.layer)) {
        for (std::size_t i = 0; i < LaneHeat::branches; ++i) {
            string_side[i] = load(rows.string_side[i]);
            hair_side[i] = load(rows.hair_side[i]);
        }
    }
    HWY_INLINE void leave(LanePointRows& rows) const {
        store(slips, rows.slips);
        store(slip, rows.slip);
        store(power, rows.power);
        store(owed, rows.owed);
        store(layer, rows.layer);
        for (std::size_t i = 0; i < LaneHeat::branches; ++i) {
            store(string_side[i], rows.string_side[i]);
            store(hair_side[i], rows.hair_side[i]);
        }
    }

    Row slips, slip, power, owed, layer;
    Row string_side[LaneHeat::branches];
    Row hair_side[LaneHeat::branches];
};

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

/// Heat that layer and branches give in this sample, and what they take up per kelvin; the first look's mu.
struct Warming {
    Row inflow;
    Row per_sum;  // 1 / (W/K)
    Row left[LaneHeat::branches];
    Row owed;
    Row given;  // W per newton, that goes into the contact in this sample
    Row mu;
};

/// a[0] + a[1] + ... of five, in pairs: one waits less for the other.
HWY_INLINE Row sum_of(const Row (&a)[LaneHeat::branches]) {
    static_assert(LaneHeat::branches == 5);
    return ((a[0] + a[1]) + (a[2] + a[3])) + a[4];
}

HWY_INLINE void begin_heat(const LaneHeat& h, const Point& p, const Row& slip_speed, Warming& out) {
    constexpr std::size_t n = LaneHeat::branches;
    const Row renewed = all(h.renewal_per_slip) * slip_speed;
    Row stays[n];
    Row hair[n];
    Row gone[n];
    for (std::size_t i = 0; i < n; ++i) {
        out.left[i] = all(1.0F) / (all(h.pull_once[i]) + renewed);
        stays[i] = all(h.kept[i]) * p.string_side[i];
        hair[i] = (all(h.conductance[i]) * p.hair_side[i]) * out.left[i];
        gone[i] = all(h.gone[i]) * out.left[i];
    }
    out.inflow = (all(h.layer) * p.layer + sum_of(stays)) + sum_of(hair);
    out.per_sum = all(1.0F) / ((all(h.sum) + all(h.sum_per_renewal) * renewed) - sum_of(gone));
}

HWY_INLINE void finish_heat(const LaneHeat& h, Point& p, const Warming& w) {
    p.layer = (w.inflow + w.given) * w.per_sum;
    for (std::size_t i = 0; i < LaneHeat::branches; ++i) {
        p.string_side[i] = p.string_side[i] + all(h.follow[i]) * (p.layer - p.string_side[i]);
        p.hair_side[i] = (p.hair_side[i] + all(h.pull[i]) * p.layer) * w.left[i];
    }
}

HWY_INLINE Row coefficient_when(const LaneContact& contact, const Row& temperature) {
    if (contact.table.empty()) return on_curve(contact.curve, temperature);
    return between(contact.table.data(), within(temperature * all(contact.steps_per_kelvin), all(contact.last_step)));
}

// A law's parts within a sample, for points that feel each other: begin; try_out as often as the others change; where it
// `looks_twice`, look_again and try_out once more; finish.

/// Heun's rule, as in rosin.cpp; where nothing slipped the second look changes nothing.
template <bool askew>
struct ThermalLaw {
    static constexpr bool looks_twice = true;
    using Look = Warming;

    HWY_INLINE static Row speed(const Row& slip, const Row& lengthwise) {
        if constexpr (askew) return root(slip * slip + lengthwise * lengthwise);
        return size(slip);
    }
    HWY_INLINE static Row power(const LaneContact& contact, const Warming& w, const Rubbing& r, const Row& slip) {
        const Row heat = w.mu * speed(slip, r.lengthwise);
        return contact.crowded ? heat * r.bow_force : heat;  // spots are those of 1 N
    }
    HWY_INLINE static void begin(const LaneContact& contact, const Point& p, const Row& lengthwise, Warming& w) {
        begin_heat(contact.heat, p, speed(p.slip, lengthwise), w);
        w.owed = p.owed;
        w.given = p.owed + all(0.5F) * p.power;
        w.mu = coefficient_when(contact, (w.inflow + w.given) * w.per_sum);
    }
    HWY_INLINE static Rubbed try_out(const LaneContact&, const Point&, const Warming& w, const Rubbing& r) {
        return rub_evenly<askew>(r, w.mu);
    }
    HWY_INLINE static void look_again(const LaneContact& contact, const Rubbing& r, const Row& slip, Warming& w) {
        w.given = w.owed + all(0.5F) * power(contact, w, r, slip);
        w.mu = coefficient_when(contact, (w.inflow + w.given) * w.per_sum);
    }
    HWY_INLINE static void finish(const LaneContact& contact, const Rubbing& r, const Row& slip, const Warming& w,
                                  Point& p) {
        finish_heat(contact.heat, p, w);
        p.power = power(contact, w, r, slip);
        p.owed = p.power - (w.given - w.owed);
    }
};

/// A law that remembers nothing but whether it slipped.
struct ColdLaw {
    static constexpr bool looks_twice = false;
    struct Look {};

    HWY_INLINE static void begin(const LaneContact&, const Point&, const Row&, Look&) {}
    HWY_INLINE static void look_again(const LaneContact&, const Rubbing&, const Row&, Look&) {}
    HWY_INLINE static void finish(const LaneContact&, const Rubbing&, const Row&, const Look&, Point&) {}
};

template <bool askew>
struct CoulombLaw : ColdLaw {
    HWY_INLINE static Rubbed try_out(const LaneContact& contact, const Point& p, const Look&, const Rubbing& r) {
        const Row sliding = all(contact.sliding_coefficient) * r.bow_force;
        if constexpr (askew) return rub_askew(r, sliding);
        // a stick holds to the greater force; a slip holds while there is a sliding speed
        const Row greatest = all(contact.static_coefficient) * r.bow_force;
        const Mask slipped = all(0.5F) < p.slips;
        const Row bears = choose(slipped & (sliding < greatest), sliding, greatest);
        return stick_or_slide(r, size(r.free_slip) * r.grip <= bears, sliding);
    }
};

/// Load line against curve, by Newton's steps from the right: see rosin.cpp.
struct DoubleExponentialLaw : ColdLaw {
    HWY_INLINE static Rubbed try_out(const LaneContact&, const Point& p, const Look&, const Rubbing& r) {
        const Row offset = size(r.free_slip);
        const Mask slipped = all(0.5F) < p.slips;
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
struct HyperbolaLaw : ColdLaw {
    HWY_INLINE static Rubbed try_out(const LaneContact& contact, const Point& p, const Look&, const Rubbing& r) {
        const Row offset = size(r.free_slip);
        const Row corner = all(contact.corner_speed);
        const Row drop = all(contact.static_coefficient - contact.sliding_coefficient);
        const Mask slipped = all(0.5F) < p.slips;
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
