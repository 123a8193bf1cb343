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

/// A line as the time loop holds it: its numbers and pointers beside the processor, which stores of lanes can't change.
struct LineView {
    explicit HWY_INLINE LineView(LaneLine& line)
        : present(line.present),
          samples_to_bridge(line.samples_to_bridge),
          samples_to_stop(line.samples_to_stop),
          mask(line.mask),
          now(line.now),
          half_admittance(line.half_admittance),
          fraction(line.fraction),
          first_poles(line.first_poles),
          poles(line.poles.size()),
          sections(line.section_states.size() / 2),
          pole(line.poles.data()),
          section(line.section),
          toward_bridge(line.toward_bridge.data()),
          toward_stop(line.toward_stop.data()),
          pole_states(line.pole_states.data()),
          section_states(line.section_states.data()),
          fraction_in(load(line.fraction_in)),
          fraction_out(load(line.fraction_out)) {}
    HWY_INLINE void leave(LaneLine& line) const {
        line.now = now;
        store(fraction_in, line.fraction_in);
        store(fraction_out, line.fraction_out);
    }

    const bool present;
    const std::size_t samples_to_bridge, samples_to_stop, mask;
    std::size_t now;
    const float half_admittance, fraction;
    const std::size_t first_poles, poles, sections;
    const LanePole* const pole;
    const LaneResonance section;
    LaneRow* const toward_bridge;
    LaneRow* const toward_stop;
    LaneRow* const pole_states;
    LaneRow* const section_states;
    Row fraction_in, fraction_out;
};

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
HWY_INLINE Row filtered(LineView& line, const Row& in) {
    Row wave = lose(line.pole, line.pole_states, line.first_poles, in);
    wave = lose(line.pole + line.first_poles, line.pole_states + line.first_poles, line.poles - line.first_poles, wave);
    for (std::size_t k = 0; k < line.sections; ++k)
        wave = wave - resonate(line.section, line.section_states + 2 * k, all(line.section.feed) * wave);
    const Row out = all(line.fraction) * (wave - line.fraction_out) + line.fraction_in;
    line.fraction_in = wave;
    line.fraction_out = out;
    return out;
}

HWY_INLINE void turn_at_stop(LineView& line) {
    if (!line.present) return;
    const Row in = load(line.toward_stop[(line.now - line.samples_to_stop) & line.mask]);
    const Row out = -filtered(line, in);
    store(out, line.toward_bridge[line.now & line.mask]);
}

HWY_INLINE Row wave_at_bridge(const LineView& line) {
    return load(line.toward_bridge[(line.now - line.samples_to_bridge) & line.mask]);
}
HWY_INLINE void leave_bridge(LineView& line, const Row& wave) { store(wave, line.toward_stop[line.now & line.mask]); }

/// The bridge as the time loop holds it.
struct BridgeView {
    explicit HWY_INLINE BridgeView(LaneWork& work)
        : mode(work.modes.data()),
          states(work.mode_states.data()),
          modes(work.modes.size()),
          known(load(work.known)),
          impedance(work.impedance),
          yield(work.bridge_yield),
          steady_reflection(work.steady_reflection),
          lean(work.lean) {}

    const LaneResonance* const mode;
    LaneRow* const states;
    const std::size_t modes;
    Row known;
    const float impedance, yield, steady_reflection, lean;
};

/// Moves every mode on by the force of this sample, and sums what they will do without one in the next.
HWY_INLINE void move_modes(BridgeView& bridge, const Row& force) {
    Row known = all(0.0F);
    for (std::size_t k = 0; k < bridge.modes; ++k) {
        const LaneResonance& mode = bridge.mode[k];
        LaneRow* states = bridge.states + 2 * k;
        const Row pushed = all(mode.feed) * force;
        const Row s = load(states[1]);
        const Row w = load(states[0]) + pushed;
        const Row next = (w + pushed) - (all(mode.ease) * w + s);
        store(next, states[0]);
        store(s + all(mode.grow) * w, states[1]);
        known = known + next;
    }
    bridge.known = known;
}

/// The bridge turns the waves round, as in bridge_end.cpp; returns its force, bowing direction.
HWY_INLINE Row turn_at_bridge(BridgeView& bridge, LineView& string, LineView& standing) {
    const Row in = wave_at_bridge(string);
    Row out;
    if (bridge.modes == 0) {
        out = all(bridge.steady_reflection) * in;
        if (standing.present)
            leave_bridge(standing, all(bridge.steady_reflection) * wave_at_bridge(standing));
    } else {
        const bool both = standing.present;
        const float lean = both ? bridge.lean : 0.0F;
        const Row upright = both ? wave_at_bridge(standing) : all(0.0F);
        const float impedance = bridge.impedance * (1.0F + lean * lean);
        const Row pushed = all(2.0F * bridge.impedance) * (both ? in + all(lean) * upright : in);
        const Row force = (pushed - all(impedance) * bridge.known) * all(1.0F / (1.0F + impedance * bridge.yield));
        const Row velocity = bridge.known + all(bridge.yield) * force;
        out = velocity - in;
        if (both) leave_bridge(standing, all(lean) * velocity - upright);
        move_modes(bridge, force);
    }
    leave_bridge(string, out);
    return all(bridge.impedance) * (in - out);
}

HWY_INLINE Row velocity_at(const LineView& line, const LaneTap& tap) {
    const std::size_t coming = line.now - line.samples_to_bridge + tap.samples;
    const std::size_t going = line.now - tap.samples;
    const Row near = load(line.toward_bridge[coming & line.mask]) + load(line.toward_stop[going & line.mask]);
    if (tap.far_weight == 0.0F) return near;
    const Row far =
        load(line.toward_bridge[(coming + 1) & line.mask]) + load(line.toward_stop[(going - 1) & line.mask]);
    return all(tap.near_weight) * near + all(tap.far_weight) * far;
}

HWY_INLINE void add_to(LaneRow& row, const Row& wave) { store(load(row) + wave, row); }

HWY_INLINE void push(LineView& line, const LaneTap& tap, const Row& force) {
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
