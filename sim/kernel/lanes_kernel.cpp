// SPDX-License-Identifier: GPL-3.0-or-later
// The time loop of the vector kernel, compiled once for every instruction set.
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "sim/kernel/lanes_kernel.cpp"
#include <hwy/foreach_target.h>
//
#include "sim/kernel/lane_bow-inl.h"

HWY_BEFORE_NAMESPACE();
namespace sim::kernel::HWY_NAMESPACE {

/// A quantity that runs straight, as the time loop holds it.
struct RampView {
    explicit HWY_INLINE RampView(const LaneRamp& ramp)
        : base(load(ramp.base)), slope(load(ramp.slope)), age(load(ramp.age)), flat(ramp.flat) {}
    HWY_INLINE void leave(LaneRamp& ramp) const { store(age, ramp.age); }

    HWY_INLINE Row value_now() {
        if (flat) return base;
        const Row now = age;
        age = age + all(1.0F);
        return base + slope * now;
    }

    const Row base, slope;
    Row age;
    const bool flat;
};

/// All that the time loop holds beside the processor: its numbers and pointers are its own, so that no store of lanes
/// makes it read them again.
struct View {
    explicit HWY_INLINE View(LaneWork& work)
        : string(work.string),
          twist(work.twist),
          upright(work.upright),
          bridge(work),
          time_step(work.time_step),
          speed(work.speed),
          force(work.force),
          lengthwise(load(work.lengthwise)),
          slipping(load(work.slipping)),
          distance(load(work.distance)),
          late(load(work.late)),
          late_slips(load(work.late_slips)),
          insane(load(work.insane)) {}
    HWY_INLINE void leave(LaneWork& work) const {
        string.leave(work.string);
        twist.leave(work.twist);
        upright.leave(work.upright);
        store(bridge.known, work.known);
        speed.leave(work.speed);
        force.leave(work.force);
        store(slipping, work.slipping);
        store(distance, work.distance);
        store(late_slips, work.late_slips);
        store(insane, work.insane);
    }

    LineView string, twist, upright;
    BridgeView bridge;
    const float time_step;
    RampView speed, force;
    const Row lengthwise;
    Row slipping, distance;
    const Row late;
    Row late_slips, insane;
};

/// The string's motion towards the hair, met there by the hair's own resistance; returns what it adds to the force.
HWY_INLINE Row press(LineView& upright, const LaneBowPlace& place) {
    const Row pressed = all(place.press) * velocity_at(upright, place.upright);
    push(upright, place.upright, -pressed);
    return pressed;
}

/// As in slip_watch.cpp, bit by bit for what goes on outside.
HWY_INLINE std::uint32_t watch(View& view, const Row& bowed_slip, const Row& full, LaneRow& distance_out) {
    const Row slip = -bowed_slip;
    const Mask on = all(0.5F) < view.slipping;
    const Mask begins = without(all(0.25F) * full < slip, on);
    const Mask is_on = on | begins;
    view.distance = unless(begins, view.distance) + where(is_on, slip * all(view.time_step));
    const Mask ends = is_on & (slip < all(0.10F) * full);
    store(view.distance, distance_out);
    view.slipping = where(without(is_on, ends), all(1.0F));
    return bits(begins) | bits(ends) << lane_count;
}

HWY_INLINE void turn_at_ends(View& view, LaneRow& bridge_force) {
    store(turn_at_bridge(view.bridge, view.string, view.upright), bridge_force);
    if (view.twist.present) leave_bridge(view.twist, -wave_at_bridge(view.twist));
    turn_at_stop(view.string);
    turn_at_stop(view.twist);
    turn_at_stop(view.upright);
}

HWY_INLINE void write(const Bowed& bowed, const LaneBlock& block, std::size_t t) {
    if (block.velocity == nullptr) return;
    store(bowed.surface, block.velocity[t]);
    store(bowed.friction, block.friction[t]);
    store(bowed.temperature, block.temperature[t]);
    store(where(bowed.slips, all(1.0F)), block.slips[t]);
}

/// `bow` rubs: (view, place, hand) -> Bowed.
template <class Bow>
HWY_INLINE void advance_under(View& view, const LaneBlock& block, const Bow& bow) {
    const auto steps = static_cast<std::size_t>(block.steps);
    for (std::size_t t = 0; t < steps; ++t) {
        const LaneBowPlace& place = block.places[block.moves ? t : 0];
        turn_at_ends(view, block.bridge_force[t]);
        Hand hand{view.speed.value_now(), view.force.value_now(), view.lengthwise};
        if (view.upright.present) hand.force = positive(hand.force + press(view.upright, place));
        const Bowed bowed = bow(view, place, hand);
        block.turns[t] = watch(view, bowed.slip, hand.speed * all(place.length_per_place), block.distance[t]);
        view.late_slips = view.late_slips + where(bowed.slips, view.late);
        view.insane = choose(size(bowed.surface) < all(1e4F), view.insane, all(1.0F));
        write(bowed, block, t);
        ++view.string.now;
        ++view.twist.now;
        ++view.upright.now;
    }
}

template <class Law>
void advance_with(LaneWork& work, const LaneBlock& outer) {
    const LaneBlock block = outer;
    View view(work);
    if (work.points.size() == 1 && !work.gives) {
        Point point(work.points[0]);
        const LaneContact& contact = work.contact;
        advance_under(view, block, [&](View& v, const LaneBowPlace& place, const Hand& hand) HWY_ATTR {
            return rub<Law>(v.string, v.twist, contact, place.points[0], hand, point);
        });
        point.leave(work.points[0]);
    } else {
        advance_under(view, block, [&](View& v, const LaneBowPlace& place, const Hand& hand) HWY_ATTR {
            return rub_ribbon<Law>(v.string, v.twist, work, place, hand);
        });
    }
    view.leave(work);
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
