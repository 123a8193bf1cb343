// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/reference_run.hpp"

#include <algorithm>
#include <cmath>

namespace sim::kernel {

namespace {

constexpr double senseless_speed = 1e4;  // m/s of the string's surface

/// The bridge turns the waves round; returns its force per impedance, bowing direction.
double turn_at_bridge(BridgeEnd& bridge, WaveLines& string, Upright& upright, double lean) {
    const double in = string.wave_at_bridge();
    double out = 0.0;
    if (upright.present()) {
        const BridgeEnd::Waves both = bridge.reflect({in, upright.lines().wave_at_bridge()}, lean);
        upright.lines().leave_bridge(both.upright);
        out = both.bowing;
    } else {
        out = bridge.reflect(in);
    }
    string.leave_bridge(out);
    return in - out;
}

bool same_waves(const Lines& a, const Lines& b) { return a.impedance == b.impedance && a.speed == b.speed; }

}  // namespace

double Upright::press() {
    const double push = -resistance_ * lines_.velocity_at_bow() / (1.0 + resistance_ * lines_.yield());
    lines_.push(push);
    return -push;
}

ReferenceRun::ReferenceRun(const Note& note, const Start& start, double contact_point)
    : note_(note),
      string_(note.transverse, note.sample_rate),
      twist_(note.torsional, note.sample_rate),
      upright_(note, note.sample_rate),
      bridge_(note.bridge, note.transverse.impedance, note.sample_rate),
      bow_(note, note.sample_rate, start.warmth) {
    if (start.helmholtz) string_.fill_with_helmholtz({contact_point, note.length}, start.speed);
}

void ReferenceRun::place_bow(double contact_point) {
    bow_.place(contact_point, string_, twist_);
    upright_.lines().place_bow(contact_point);
}

void ReferenceRun::take_up(const ReferenceRun& before) {
    string_.take_up(before.string_);
    twist_.take_up(before.twist_);
    upright_.lines().take_up(before.upright_.lines());
    bridge_.take_up(before.bridge_);
    bow_.take_up(before.bow_);
}

double ReferenceRun::advance(const BowContact::Hand& hand) {
    const double pull = turn_at_bridge(bridge_, string_, upright_, note_.hair.bridge_lean);
    if (twist_.present()) twist_.leave_bridge(-twist_.wave_at_bridge());
    for (WaveLines* lines : {&string_, &twist_, &upright_.lines()}) lines->turn_at_stop();
    BowContact::Hand pressed = hand;
    if (upright_.present()) pressed.force = std::max(0.0, hand.force + upright_.press());
    bow_.rub(string_, twist_, pressed);
    return note_.transverse.impedance * pull;
}

void ReferenceRun::step() {
    for (WaveLines* lines : {&string_, &twist_, &upright_.lines()}) lines->step();
}

bool ReferenceRun::diverged() const { return !(std::abs(bow_.surface()) < senseless_speed); }

bool same_string(const Note& a, const Note& b) {
    return a.sample_rate == b.sample_rate && same_waves(a.transverse, b.transverse) &&
           same_waves(a.torsional, b.torsional) && a.hair == b.hair && a.bridge == b.bridge && a.contact == b.contact;
}

}  // namespace sim::kernel
