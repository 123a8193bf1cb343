// SPDX-License-Identifier: GPL-3.0-or-later
// The hair on the string, as in bow_contact.cpp.  Included once for every instruction set.
#if defined(BOWBAND_LANE_BOW_INL) == defined(HWY_TARGET_TOGGLE)
#ifdef BOWBAND_LANE_BOW_INL
#undef BOWBAND_LANE_BOW_INL
#else
#define BOWBAND_LANE_BOW_INL
#endif

#include "sim/kernel/lane_ends-inl.h"
#include "sim/kernel/lane_friction-inl.h"

HWY_BEFORE_NAMESPACE();
namespace sim::kernel::HWY_NAMESPACE {

/// What the bow does in one sample, all points together.
struct Bowed {
    Row friction;
    Row slip;
    Row surface;
    Mask slips;  // more than half of the points
    Row temperature;
};

/// How the stick moves.
struct Hand {
    Row speed;
    Row force;
    Row lengthwise;
};

HWY_INLINE Row velocity_at(const LineView& string, const LineView& twist, const LanePlace& place) {
    const Row velocity = velocity_at(string, place.string);
    return twist.present ? velocity + velocity_at(twist, place.twist) : velocity;
}

HWY_INLINE void push(LineView& string, LineView& twist, const LanePlace& place, const Row& force) {
    push(string, place.string, force);
    if (twist.present) push(twist, place.twist, force);
}

/// One point of hair that does not give.
template <class Law>
HWY_INLINE Bowed rub(LineView& string, LineView& twist, const LaneContact& contact, const LanePlace& place,
                     const Hand& hand, Point& point) {
    const Row surface = velocity_at(string, twist, place);
    const Rubbing rubbing{surface - hand.speed, all(place.full_yield), all(place.grip), hand.force, hand.lengthwise};
    typename Law::Look look;
    Law::begin(contact, point, hand.lengthwise, look);
    Rubbed rubbed = Law::try_out(contact, point, look, rubbing);
    if constexpr (Law::looks_twice) {
        Law::look_again(contact, rubbing, rubbed.slip, look);
        rubbed = Law::try_out(contact, point, look, rubbing);
    }
    Law::finish(contact, rubbing, rubbed.slip, look, point);
    point.slip = rubbed.slip;
    point.slips = where(rubbed.slips, all(1.0F));
    push(string, twist, place, rubbed.force);
    return {rubbed.force, rubbed.slip, surface + all(place.yield) * rubbed.force, rubbed.slips, point.layer};
}

/// Several points, or one that gives, in the middle of a sample.
template <class Law>
struct Ribbon {
    std::size_t count;
    Rubbing rubbing[most_lane_points];
    Rubbed rubbed[most_lane_points];
    Row lag[most_lane_points];
    Row felt[most_lane_points];  // m/s, from the others
    typename Law::Look look[most_lane_points];
};

HWY_INLINE Row felt_from_others(const LaneWork& work, const LaneBowPlace& place, std::size_t i) {
    const std::size_t count = work.points.size();
    Row sum = all(0.0F);
    for (std::size_t j = 0; j < count; ++j)
        sum = sum + all(place.felt[i * count + j]) * load(work.points[j].force);
    return sum;
}

/// Each point's force from all the others', round and round; always as many rounds.
template <class Law>
HWY_INLINE void try_together(LaneWork& work, const LaneBowPlace& place, Ribbon<Law>& ribbon) {
    const int rounds = ribbon.count > 1 ? lane_rounds : 1;
    for (int round = 0; round < rounds; ++round)
        for (std::size_t i = 0; i < ribbon.count; ++i) {
            Rubbing asked = ribbon.rubbing[i];
            ribbon.felt[i] = felt_from_others(work, place, i);
            asked.free_slip = asked.free_slip + ribbon.felt[i];
            ribbon.rubbed[i] = Law::try_out(work.contact, Point(work.points[i]), ribbon.look[i], asked);
            store(ribbon.rubbed[i].force, work.points[i].force);
        }
}

template <class Law>
HWY_INLINE Bowed finish(LaneWork& work, const LaneBowPlace& place, const Ribbon<Law>& ribbon) {
    const Row share = all(work.share);
    Bowed bowed{all(0.0F), all(0.0F), all(0.0F), {}, all(0.0F)};
    Row slipping = all(0.0F);
    for (std::size_t i = 0; i < ribbon.count; ++i) {
        LanePointRows& rows = work.points[i];
        const Rubbed& rubbed = ribbon.rubbed[i];
        Point point(rows);
        Law::finish(work.contact, ribbon.rubbing[i], rubbed.slip, ribbon.look[i], point);
        point.slip = rubbed.slip;
        point.slips = where(rubbed.slips, all(1.0F));
        point.leave(rows);
        const Row hair = ribbon.lag[i] + all(work.hair_yield) * rubbed.force;
        store(hair, rows.speed);
        store(load(rows.stretch) + all(work.time_step) * hair, rows.stretch);
        bowed.friction = bowed.friction + rubbed.force;
        bowed.slip = bowed.slip + share * rubbed.slip;
        const Row surface = load(rows.free_velocity) + felt_from_others(work, place, i);
        bowed.surface = bowed.surface + share * (surface + all(place.points[i].yield) * rubbed.force);
        bowed.temperature = bowed.temperature + share * point.layer;
        slipping = slipping + point.slips;
    }
    bowed.slips = all(static_cast<float>(ribbon.count)) < slipping + slipping;
    return bowed;
}

/// Reads each point's velocity in `free_velocity`, leaves its force in `force`.
template <class Law>
HWY_NOINLINE void rub_together(LaneWork& work, const LaneBowPlace& place, const Hand& hand, Bowed& bowed) {
    Ribbon<Law> ribbon;
    ribbon.count = work.points.size();
    for (std::size_t i = 0; i < ribbon.count; ++i) {
        LanePointRows& rows = work.points[i];
        ribbon.lag[i] = all(work.hair_yield) *
                        (all(work.inertia) * load(rows.speed) - all(work.stiffness) * load(rows.stretch));
        ribbon.rubbing[i] = {(load(rows.free_velocity) - hand.speed) + ribbon.lag[i], all(place.points[i].full_yield),
                             all(place.points[i].grip), all(work.share) * hand.force, hand.lengthwise};
        Law::begin(work.contact, Point(rows), hand.lengthwise, ribbon.look[i]);
    }
    try_together(work, place, ribbon);
    if constexpr (Law::looks_twice) {
        for (std::size_t i = 0; i < ribbon.count; ++i)
            Law::look_again(work.contact, ribbon.rubbing[i], ribbon.rubbed[i].slip, ribbon.look[i]);
        try_together(work, place, ribbon);
    }
    bowed = finish(work, place, ribbon);
}

template <class Law>
HWY_INLINE Bowed rub_ribbon(LineView& string, LineView& twist, LaneWork& work, const LaneBowPlace& place,
                            const Hand& hand) {
    const std::size_t count = work.points.size();
    for (std::size_t i = 0; i < count; ++i)
        store(velocity_at(string, twist, place.points[i]), work.points[i].free_velocity);
    Bowed bowed;
    rub_together<Law>(work, place, hand, bowed);
    for (std::size_t i = 0; i < count; ++i) push(string, twist, place.points[i], load(work.points[i].force));
    return bowed;
}

}  // namespace sim::kernel::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#endif
