// SPDX-License-Identifier: GPL-3.0-or-later
// Both ends of the string.  Included once for every instruction set.
#if defined(BOWBAND_LANE_ENDS_INL) == defined(HWY_TARGET_TOGGLE)
#ifdef BOWBAND_LANE_ENDS_INL
#undef BOWBAND_LANE_ENDS_INL
#else
#define BOWBAND_LANE_ENDS_INL
#endif

#include "sim/kernel/lane_vectors-inl.h"

HWY_BEFORE_NAMESPACE();
namespace sim::kernel::HWY_NAMESPACE {

/// One sample of a resonance that `pushed` feeds; returns its own motion in this sample.
HWY_INLINE Row resonate(const LaneResonance& r, LaneRow* states, const Row& pushed) {
    const Row s = load(states[1]);
    const Row w = load(states[0]) + pushed;
    store((w + pushed) - (all(r.ease) * w + s), states[0]);
    store(s + all(r.grow) * w, states[1]);
    return w;
}

HWY_INLINE Row lose(const LanePole* poles, LaneRow* states, std::size_t count, const Row& in) {
    if (count == 0) return in;
    Row lost = all(0.0F);
    for (std::size_t k = 0; k < count; ++k) {
        const Row state = load(states[k]);
        const Row d = in - state;
        lost = lost + all(poles[k].take) * d;
        store(state + all(poles[k].follow) * d, states[k]);
    }
    return in - lost;
}

/// Losses, dispersion and fraction of a sample at the stop, as in end_filter.cpp.
HWY_INLINE Row filtered(LaneLine& line, const Row& in) {
    const std::size_t first = line.first_poles;
    const std::size_t poles = line.poles.size();
    const std::size_t sections = line.section_states.size() / 2;
    const LanePole* pole = line.poles.data();
    LaneRow* pole_states = line.pole_states.data();
    LaneRow* section_states = line.section_states.data();
    const LaneResonance section = line.section;
    Row wave = lose(pole, pole_states, first, in);
    wave = lose(pole + first, pole_states + first, poles - first, wave);
    for (std::size_t k = 0; k < sections; ++k)
        wave = wave - resonate(section, section_states + 2 * k, all(section.feed) * wave);
    const Row out = all(line.fraction) * (wave - load(line.fraction_out)) + load(line.fraction_in);
    store(wave, line.fraction_in);
    store(out, line.fraction_out);
    return out;
}

HWY_INLINE void turn_at_stop(LaneLine& line) {
    if (!line.present) return;
    const Row in = load(line.toward_stop[(line.now - line.samples_to_stop) & line.mask]);
    const Row out = -filtered(line, in);
    store(out, line.toward_bridge[line.now & line.mask]);
}

HWY_INLINE Row wave_at_bridge(const LaneLine& line) {
    return load(line.toward_bridge[(line.now - line.samples_to_bridge) & line.mask]);
}
HWY_INLINE void leave_bridge(LaneLine& line, const Row& wave) { store(wave, line.toward_stop[line.now & line.mask]); }

/// Moves every mode on by the force of this sample, and sums what they will do without one in the next.
HWY_INLINE void move_modes(LaneWork& work, const Row& force) {
    const std::size_t count = work.modes.size();
    const LaneResonance* modes = work.modes.data();
    LaneRow* states = work.mode_states.data();
    Row known = all(0.0F);
    for (std::size_t k = 0; k < count; ++k) {
        const Row pushed = all(modes[k].feed) * force;
        const Row s = load(states[2 * k + 1]);
        const Row w = load(states[2 * k]) + pushed;
        const Row next = (w + pushed) - (all(modes[k].ease) * w + s);
        store(next, states[2 * k]);
        store(s + all(modes[k].grow) * w, states[2 * k + 1]);
        known = known + next;
    }
    store(known, work.known);
}

/// The bridge turns the waves round, as in bridge_end.cpp; returns its force, bowing direction.
HWY_INLINE Row turn_at_bridge(LaneWork& work) {
    const Row in = wave_at_bridge(work.string);
    Row out;
    if (work.modes.empty()) {
        out = all(work.steady_reflection) * in;
        if (work.upright.present)
            leave_bridge(work.upright, all(work.steady_reflection) * wave_at_bridge(work.upright));
    } else {
        const bool both = work.upright.present;
        const float lean = both ? work.lean : 0.0F;
        const Row upright = both ? wave_at_bridge(work.upright) : all(0.0F);
        const float impedance = work.impedance * (1.0F + lean * lean);
        const Row known = load(work.known);
        const Row pushed = all(2.0F * work.impedance) * (both ? in + all(lean) * upright : in);
        const Row force = (pushed - all(impedance) * known) * all(1.0F / (1.0F + impedance * work.bridge_yield));
        const Row velocity = known + all(work.bridge_yield) * force;
        out = velocity - in;
        if (both) leave_bridge(work.upright, all(lean) * velocity - upright);
        move_modes(work, force);
    }
    leave_bridge(work.string, out);
    return all(work.impedance) * (in - out);
}

HWY_INLINE Row velocity_at(const LaneLine& line, const LaneTap& tap) {
    const std::size_t coming = line.now - line.samples_to_bridge + tap.samples;
    const std::size_t going = line.now - tap.samples;
    const Row near = load(line.toward_bridge[coming & line.mask]) + load(line.toward_stop[going & line.mask]);
    if (tap.far_weight == 0.0F) return near;
    const Row far =
        load(line.toward_bridge[(coming + 1) & line.mask]) + load(line.toward_stop[(going - 1) & line.mask]);
    return all(tap.near_weight) * near + all(tap.far_weight) * far;
}

HWY_INLINE void add_to(LaneRow& row, const Row& wave) { store(load(row) + wave, row); }

HWY_INLINE void push(LaneLine& line, const LaneTap& tap, const Row& force) {
    const std::size_t coming = line.now - line.samples_to_bridge + tap.samples;
    const std::size_t going = line.now - tap.samples;
    const Row wave = all(line.half_admittance) * force;
    const Row near = all(tap.near_weight) * wave;
    add_to(line.toward_bridge[coming & line.mask], near);
    add_to(line.toward_stop[going & line.mask], near);
    if (tap.far_weight == 0.0F) return;
    const Row far = all(tap.far_weight) * wave;
    add_to(line.toward_bridge[(coming + 1) & line.mask], far);
    add_to(line.toward_stop[(going - 1) & line.mask], far);
}

}  // namespace sim::kernel::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#endif
