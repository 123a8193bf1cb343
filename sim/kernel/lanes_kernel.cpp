// SPDX-License-Identifier: GPL-3.0-or-later
// The time loop of the vector kernel, compiled once for every instruction set.
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "sim/kernel/lanes_kernel.cpp"
#include <hwy/foreach_target.h>
//
#include "sim/kernel/lane_ends-inl.h"
#include "sim/kernel/lane_friction-inl.h"

HWY_BEFORE_NAMESPACE();
namespace sim::kernel::HWY_NAMESPACE {

/// What the bow does in one sample, all points together.
struct Bowed {
    Row friction;
    Row slip;
    Row surface;
    Row slipping;  // points
};

/// As in bow_contact.cpp: the points rub one after another, then all push.
template <class Law>
HWY_INLINE Bowed rub(LaneWork& work, const LaneBowPlace& place, const Row& speed, const Row& force) {
    const std::size_t count = work.points.size();
    Bowed bowed{all(0.0F), all(0.0F), all(0.0F), all(0.0F)};
    const Row share = all(work.share);
    for (std::size_t i = 0; i < count; ++i) {
        LanePointRows& point = work.points[i];
        const LanePlace& here = place.points[i];
        Row surface = velocity_at(work.string, here.string);
        if (work.twist.present) surface = surface + velocity_at(work.twist, here.twist);
        for (std::size_t j = 0; j < i; ++j)
            surface = surface + all(place.felt[i * count + j]) * load(work.points[j].force);
        Rubbing rubbing{surface - speed, all(here.full_yield), all(here.grip), share * force, load(work.lengthwise)};
        Row lag = all(0.0F);
        if (work.gives) {
            lag = all(work.hair_yield) *
                  (all(work.inertia) * load(point.speed) - all(work.stiffness) * load(point.stretch));
            rubbing.free_slip = rubbing.free_slip + lag;
        }
        const Rubbed rubbed = Law::rub(work.contact, point, rubbing);
        if (work.gives) {
            const Row hair = lag + all(work.hair_yield) * rubbed.force;
            store(hair, point.speed);
            store(load(point.stretch) + all(work.time_step) * hair, point.stretch);
        }
        const Row slips = where(rubbed.slips, all(1.0F));
        store(rubbed.force, point.force);
        store(rubbed.slip, point.slip);
        store(slips, point.slips);
        bowed.friction = bowed.friction + rubbed.force;
        bowed.slip = bowed.slip + share * rubbed.slip;
        bowed.surface = bowed.surface + share * (surface + all(here.yield) * rubbed.force);
        bowed.slipping = bowed.slipping + slips;
    }
    for (std::size_t i = 0; i < count; ++i) {
        const Row push_force = load(work.points[i].force);
        push(work.string, place.points[i].string, push_force);
        if (work.twist.present) push(work.twist, place.points[i].twist, push_force);
    }
    return bowed;
}

HWY_INLINE Row value_now(LaneRamp& ramp) {
    const Row base = load(ramp.base);
    if (ramp.flat) return base;
    const Row age = load(ramp.age);
    store(age + all(1.0F), ramp.age);
    return base + load(ramp.slope) * age;
}

/// The string's motion towards the hair, met there by the hair's own resistance; returns what it adds to the force.
HWY_INLINE Row press(LaneWork& work, const LaneBowPlace& place) {
    const Row pressed = all(place.press) * velocity_at(work.upright, place.upright);
    push(work.upright, place.upright, -pressed);
    return pressed;
}

/// As in slip_watch.cpp, bit by bit for what goes on outside.
HWY_INLINE std::uint32_t watch(LaneWork& work, const Bowed& bowed, const Row& full, LaneRow& distance_out) {
    const Row slip = -bowed.slip;
    const Mask on = all(0.5F) < load(work.slipping);
    const Mask begins = without(all(0.25F) * full < slip, on);
    const Mask is_on = on | begins;
    const Row distance = unless(begins, load(work.distance)) + where(is_on, slip * all(work.time_step));
    const Mask ends = is_on & (slip < all(0.10F) * full);
    store(distance, work.distance);
    store(distance, distance_out);
    store(where(without(is_on, ends), all(1.0F)), work.slipping);
    return bits(begins) | bits(ends) << lane_count;
}

template <class Law>
HWY_INLINE void step(LaneWork& work, const LaneBlock& block, std::size_t t) {
    const LaneBowPlace& place = block.places[block.moves ? t : 0];
    store(turn_at_bridge(work), block.bridge_force[t]);
    if (work.twist.present) leave_bridge(work.twist, -wave_at_bridge(work.twist));
    turn_at_stop(work.string);
    turn_at_stop(work.twist);
    turn_at_stop(work.upright);

    const Row speed = value_now(work.speed);
    Row force = value_now(work.force);
    if (work.upright.present) force = positive(force + press(work, place));
    const Bowed bowed = rub<Law>(work, place, speed, force);
    block.turns[t] = watch(work, bowed, speed * all(place.length_per_place), block.distance[t]);
    const Mask slips = all(static_cast<float>(work.points.size())) < bowed.slipping + bowed.slipping;
    store(load(work.late_slips) + where(slips, load(work.late)), work.late_slips);
    store(choose(size(bowed.surface) < all(1e4F), load(work.insane), all(1.0F)), work.insane);
    if (block.velocity != nullptr) {
        store(bowed.surface, block.velocity[t]);
        store(bowed.friction, block.friction[t]);
        Row temperature = all(0.0F);
        for (const LanePointRows& point : work.points) temperature = temperature + load(point.layer);
        store(temperature * all(work.share), block.temperature[t]);
        store(where(slips, all(1.0F)), block.slips[t]);
    }
    ++work.string.now;
    ++work.twist.now;
    ++work.upright.now;
}

template <class Law>
void advance_with(LaneWork& work, const LaneBlock& block) {
    const std::size_t steps = static_cast<std::size_t>(block.steps);
    for (std::size_t t = 0; t < steps; ++t) step<Law>(work, block, t);
}

void advance(LaneWork& work, const LaneBlock& block) {
    switch (work.contact.law) {
        case LaneLaw::thermal:
            return advance_with<ThermalLaw<false>>(work, block);
        case LaneLaw::thermal_askew:
            return advance_with<ThermalLaw<true>>(work, block);
        case LaneLaw::coulomb:
            return advance_with<CoulombLaw<false>>(work, block);
        case LaneLaw::coulomb_askew:
            return advance_with<CoulombLaw<true>>(work, block);
        case LaneLaw::double_exponential:
            return advance_with<DoubleExponentialLaw>(work, block);
        case LaneLaw::hyperbola:
            return advance_with<HyperbolaLaw>(work, block);
    }
}

/// Four running sums, so that one waits less for the other.
void thin(const LaneRow* rows, const LaneThinning& thinning, LaneRow* out) {
    const std::size_t half = thinning.taps.size() / 2;
    const float* taps = thinning.taps.data();
    for (std::size_t i = 0; i < thinning.outputs; ++i, rows += thinning.step) {
        const LaneRow* last = rows + 2 * half;
        Row sums[4] = {all(taps[half]) * load(rows[half]), all(0.0F), all(0.0F), all(0.0F)};
        for (std::size_t k = 0; k < half; ++k)
            sums[k % 4] = sums[k % 4] + all(taps[k]) * (load(rows[k]) + load(*(last - k)));
        store((sums[0] + sums[1]) + (sums[2] + sums[3]), out[i]);
    }
}

void span(const LaneRow* rows, std::size_t count, LaneRow* out) {
    Row low = load(rows[0]);
    Row high = low;
    for (std::size_t i = 1; i < count; ++i) {
        const Row here = load(rows[i]);
        low = choose(here < low, here, low);
        high = choose(high < here, here, high);
    }
    store(high - low, *out);
}

}  // namespace sim::kernel::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace sim::kernel {

HWY_EXPORT(advance);
HWY_EXPORT(thin);
HWY_EXPORT(span);

void advance_lanes(LaneWork& work, const LaneBlock& block) noexcept { HWY_DYNAMIC_DISPATCH(advance)(work, block); }

void thin_lanes(const LaneRow* rows, const LaneThinning& thinning, LaneRow* out) noexcept {
    HWY_DYNAMIC_DISPATCH(thin)(rows, thinning, out);
}

void span_of_lanes(const LaneRow* rows, std::size_t count, LaneRow* out) noexcept {
    HWY_DYNAMIC_DISPATCH(span)(rows, count, out);
}

}  // namespace sim::kernel
#endif
