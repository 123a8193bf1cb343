// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/lane_plan.hpp"

#include "sim/kernel/bridge_end.hpp"
#include "sim/kernel/lane_curve.hpp"

#include <cassert>
#include <cmath>

namespace sim::kernel {

namespace {

float rounded(double value) { return static_cast<float>(value); }

/// k = a1 s1 - a2 s2 and s = 2 a2 s2 in place of the states of a trapezoidal resonance of g, a1 = 1/(1 + g(g + d)) and
/// a2 = g a1; `feed` is what an input gives to its motion within the sample.  (derived)
LaneResonance resonance(double g, double a1, double a2, double feed) {
    return {.feed = rounded(feed), .ease = rounded(2.0 - 2.0 * a1 + 2.0 * g * a2), .grow = rounded(4.0 * g * a2)};
}

LaneLine lane_line(const WaveLines& lines, double impedance) {
    LaneLine line;
    line.present = lines.present();
    if (!line.present) return line;
    line.samples_to_bridge = lines.samples_to_bridge();
    line.samples_to_stop = lines.samples_to_stop();
    line.mask = lines.toward_bridge().size() - 1;
    line.now = lines.now();
    line.half_admittance = rounded(0.5 / impedance);
    const EndFilter& end = lines.end();
    line.fraction = rounded(end.fraction());
    line.first_poles = end.losses().size();
    for (const auto* row : {&end.losses(), &end.end_losses()})
        for (const EndFilter::OnePole& pole : *row)
            line.poles.push_back({.take = rounded(pole.share * (1.0 - pole.gain)), .follow = rounded(2.0 * pole.gain)});
    const EndFilter::Section section = end.section();
    const double a2 = section.g * section.a1;
    line.section = resonance(section.g, section.a1, a2, section.twice_k * a2);
    line.toward_bridge.resize(lines.toward_bridge().size());
    line.toward_stop.resize(lines.toward_stop().size());
    line.pole_states.resize(line.poles.size());
    line.section_states.resize(2 * end.sections().size());
    return line;
}

LaneHeat lane_heat(const HeatPath& path, double time_step) {
    assert(path.branches.size() == LaneHeat::branches);
    LaneHeat heat;
    heat.renewal_per_slip = rounded(time_step / path.renewal_length);
    heat.layer = rounded(path.capacity / time_step);
    heat.sum_per_renewal = rounded(path.renewed_capacity / time_step);
    double sum = path.capacity / time_step + 2.0 * path.spread;
    for (std::size_t i = 0; i < LaneHeat::branches; ++i) {
        const HeatPath::Branch& branch = path.branches[i];
        const double pull = time_step / branch.time;
        const double keep = 1.0 / (1.0 + pull);
        heat.conductance[i] = rounded(branch.conductance);
        heat.kept[i] = rounded(branch.conductance * keep);
        heat.follow[i] = rounded(pull * keep);
        heat.pull[i] = rounded(pull);
        heat.pull_once[i] = rounded(1.0 + pull);
        heat.gone[i] = rounded(branch.conductance * pull);
        sum += branch.conductance * (1.0 + keep);
    }
    heat.sum = rounded(sum);
    return heat;
}

LaneLaw law_of(Contact::Kind kind) {
    switch (kind) {
        case Contact::Kind::thermal:
            return LaneLaw::thermal;
        case Contact::Kind::double_exponential:
            return LaneLaw::double_exponential;
        case Contact::Kind::hyperbola:
            return LaneLaw::hyperbola;
        case Contact::Kind::coulomb:
            break;
    }
    return LaneLaw::coulomb;
}

void add_table(LaneContact& lanes, const Contact& contact) {
    lanes.steps_per_kelvin = rounded(1.0 / contact.table_step);
    lanes.last_step = rounded(static_cast<double>(contact.table.size() - 1));
    for (std::size_t i = 0; i < contact.table.size(); ++i) {
        const double next = i + 1 < contact.table.size() ? contact.table[i + 1] : contact.table[i];
        lanes.table.push_back(rounded(contact.table[i]));
        lanes.table.push_back(rounded(next - contact.table[i]));
    }
}

LaneContact lane_contact(const Contact& contact, double sample_rate) {
    LaneContact lanes;
    lanes.law = law_of(contact.kind);
    lanes.static_coefficient = rounded(contact.static_coefficient);
    lanes.sliding_coefficient = rounded(contact.sliding_coefficient);
    lanes.corner_speed = rounded(contact.corner_speed);
    if (contact.kind != Contact::Kind::thermal) return lanes;
    lanes.crowded = !contact.heat.area_grows_with_force;
    lanes.curve = lane_curve(contact);
    if (!close_to_table(lanes.curve, contact)) add_table(lanes, contact);
    lanes.heat = lane_heat(contact.heat, 1.0 / sample_rate);
    return lanes;
}

void add_modes(LaneWork& work, const BridgeEnd& bridge) {
    work.steady_reflection = rounded(bridge.steady_reflection());
    work.bridge_yield = rounded(bridge.yield());
    for (std::size_t k = 0; k < bridge.mode_count(); ++k) {
        const BridgeEnd::Mode mode = bridge.mode(k);
        if (mode.from_force > 0.0)  // others only pad the reference's rows
            work.modes.push_back(resonance(mode.g, mode.from_s1, mode.from_s2, mode.from_force));
    }
    work.mode_states.resize(2 * work.modes.size());
}

void add_hair(LaneWork& work, const Hair& hair, double sample_rate) {
    const double share = 1.0 / hair.points;
    const double stiffness = share * hair.stiffness;
    const double inertia = share * hair.mass * sample_rate;
    work.points.resize(static_cast<std::size_t>(hair.points));
    work.share = rounded(share);
    work.time_step = rounded(1.0 / sample_rate);
    work.gives = stiffness > 0.0;
    if (!work.gives) return;
    work.stiffness = rounded(stiffness);
    work.inertia = rounded(inertia);
}

/// What a point of the hair yields, m/s per N.
double hair_yield(const Hair& hair, double sample_rate) {
    if (hair.stiffness <= 0.0) return 0.0;
    const double share = 1.0 / hair.points;
    return 1.0 / (share * (hair.mass * sample_rate + hair.resistance + hair.stiffness / sample_rate));
}

LaneTap lane_tap(const WaveLines& lines, std::size_t point) {
    if (!lines.present()) return {};
    const WaveLines::Tap& tap = lines.tap(point);
    return {.samples = tap.samples, .near_weight = rounded(tap.near_weight), .far_weight = rounded(tap.far_weight)};
}

void fill_line(LaneLine& line, const WaveLines& filled, std::size_t lane, double speed) {
    const EndFilter& end = filled.end();
    const auto set = [&](LaneRow& row, double value) { row.lane[lane] = rounded(speed * value); };
    for (std::size_t i = 0; i < line.toward_bridge.size(); ++i) {
        set(line.toward_bridge[i], filled.toward_bridge()[i]);
        set(line.toward_stop[i], filled.toward_stop()[i]);
    }
    std::size_t next = 0;
    for (const auto* row : {&end.losses(), &end.end_losses()})
        for (const EndFilter::OnePole& pole : *row) set(line.pole_states[next++], pole.state);
    const EndFilter::Section section = end.section();
    const double a2 = section.g * section.a1;
    for (std::size_t k = 0; k < end.sections().size(); ++k) {
        const EndFilter::Resonator& state = end.sections()[k];
        set(line.section_states[2 * k], section.twice_k * (section.a1 * state.s1 - a2 * state.s2));
        set(line.section_states[2 * k + 1], section.twice_k * 2.0 * a2 * state.s2);
    }
    set(line.fraction_in, end.fraction_in());
    set(line.fraction_out, end.fraction_out());
}

}  // namespace

LaneGeometry::LaneGeometry(const Note& note)
    : string(note.transverse, note.sample_rate),
      twist(note.torsional, note.sample_rate),
      upright(note.hair.upright_resistance > 0.0 ? note.transverse : Lines{}, note.sample_rate),
      hair(note.hair),
      length(note.length),
      hair_yield(kernel::hair_yield(note.hair, note.sample_rate)) {}

void place_bow(LaneGeometry& geometry, double contact_point, LaneBowPlace& place) {
    const auto count = static_cast<std::size_t>(geometry.hair.points);
    place.points.resize(count);
    place.felt.assign(count * count, 0.0F);
    for (std::size_t i = 0; i < count; ++i) {
        const double offset = geometry.hair.width * ((static_cast<double>(i) + 0.5) / static_cast<double>(count) - 0.5);
        geometry.string.place_bow(contact_point + offset, i);
        geometry.twist.place_bow(contact_point + offset, i);
        LanePlace& point = place.points[i];
        point.string = lane_tap(geometry.string, i);
        point.twist = lane_tap(geometry.twist, i);
        const double yield = geometry.string.yield(i) + geometry.twist.yield(i);
        point.yield = rounded(yield);
        point.full_yield = rounded(yield + geometry.hair_yield);
        point.grip = rounded(1.0 / (yield + geometry.hair_yield));
    }
    for (std::size_t i = 0; i < count; ++i)
        for (std::size_t j = 0; j < count; ++j)
            if (j != i)
                place.felt[i * count + j] =
                    rounded(geometry.string.shared_yield(i, j) + geometry.twist.shared_yield(i, j));
    geometry.upright.place_bow(contact_point);
    if (geometry.upright.present()) {
        place.upright = lane_tap(geometry.upright, 0);
        const double resistance = geometry.hair.upright_resistance;
        place.press = rounded(resistance / (1.0 + resistance * geometry.upright.yield()));
    }
    place.length_per_place = rounded(geometry.length / contact_point);
}

LaneWork lane_work(const Note& note, const LaneGeometry& geometry) {
    LaneWork work;
    work.string = lane_line(geometry.string, note.transverse.impedance);
    work.twist = lane_line(geometry.twist, note.torsional.impedance);
    work.upright = lane_line(geometry.upright, note.transverse.impedance);
    work.impedance = rounded(note.transverse.impedance);
    work.lean = rounded(note.hair.bridge_lean);
    add_modes(work, BridgeEnd(note.bridge, note.transverse.impedance, note.sample_rate));
    work.contact = lane_contact(note.contact, note.sample_rate);
    add_hair(work, note.hair, note.sample_rate);
    work.hair_yield = rounded(geometry.hair_yield);
    return work;
}

void fill_with_helmholtz(LaneWork& work, const Note& note, double contact_point, std::span<const double> speeds) {
    WaveLines filled(note.transverse, note.sample_rate);
    filled.fill_with_helmholtz({contact_point, note.length}, 1.0);  // all of it goes with the speed
    for (std::size_t lane = 0; lane < speeds.size(); ++lane)
        if (speeds[lane] != 0.0) fill_line(work.string, filled, lane, speeds[lane]);
}

void warm(LaneWork& work, std::size_t lane, const Warmth& warmth) {
    for (LanePointRows& point : work.points) {
        point.layer.lane[lane] = rounded(warmth.layer);
        for (std::size_t i = 0; i < warmth.string_side.size(); ++i)
            point.string_side[i].lane[lane] = rounded(warmth.string_side[i]);
    }
}

Warmth warmth_of(const LaneWork& work, std::size_t lane) {
    const LanePointRows& point = work.points[work.points.size() / 2];
    Warmth warmth{.layer = point.layer.lane[lane], .string_side = {}};
    if (work.contact.law != LaneLaw::thermal && work.contact.law != LaneLaw::thermal_askew) return warmth;
    for (const LaneRow& side : point.string_side) warmth.string_side.push_back(side.lane[lane]);
    return warmth;
}

}  // namespace sim::kernel
