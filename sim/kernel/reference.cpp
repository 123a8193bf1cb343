// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/bow_contact.hpp"
#include "sim/kernel/bridge_end.hpp"
#include "sim/kernel/end_filter.hpp"
#include "sim/kernel/note.hpp"
#include "sim/kernel/slip_watch.hpp"
#include "sim/kernel/wave_lines.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace sim::kernel {

namespace {

constexpr double senseless_speed = 1e4;  // m/s of free slip: the run has left all sense

/// Walks a profile forward in time without searching.
class Walker {
public:
    explicit Walker(const Profile& profile) : profile_(profile) {}
    double at(double time) {
        const auto& points = profile_.points;
        while (next_ < points.size() && points[next_].time <= time) ++next_;
        if (next_ == 0) return points.front().value;
        const Profile::Point& a = points[next_ - 1];
        if (next_ == points.size()) return a.value;
        const Profile::Point& b = points[next_];
        return a.value + (b.value - a.value) * (time - a.time) / (b.time - a.time);
    }

private:
    const Profile& profile_;
    std::size_t next_ = 0;
};

void keep_waveforms(Record& record, const BowContact& bow) {
    record.velocity.push_back(bow.surface());
    record.friction.push_back(bow.friction());
    record.temperature.push_back(bow.temperature());
    record.slipping.push_back(bow.slips() ? 1 : 0);
}

/// The string's motion towards the hair, met there by the hair's own resistance.
class Upright {
public:
    Upright(const Note& note, double sample_rate)
        : lines_(note.hair.upright_resistance > 0.0 ? note.transverse : Lines{}, sample_rate),
          resistance_(note.hair.upright_resistance) {}

    bool present() const { return lines_.present(); }
    WaveLines& lines() { return lines_; }

    /// What this motion adds to the bow's force, N.
    double press() {
        const double push = -resistance_ * lines_.velocity_at_bow() / (1.0 + resistance_ * lines_.yield());
        lines_.push(push);
        return -push;
    }

private:
    WaveLines lines_;
    double resistance_;
};

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

Record empty_record(const Wanted& wanted) {
    Record record;
    record.bridge_force.reserve(static_cast<std::size_t>(std::max(0, wanted.steps - wanted.bridge_from)));
    if (wanted.waveforms)
        for (auto* row : {&record.velocity, &record.friction, &record.temperature})
            row->reserve(static_cast<std::size_t>(wanted.steps));
    return record;
}

}  // namespace

Record run_reference(const Note& note, const Drive& drive, const Start& start, const Wanted& wanted) {
    const double rate = note.sample_rate;
    WaveLines string(note.transverse, rate);
    WaveLines twist(note.torsional, rate);
    Upright upright(note, rate);
    BridgeEnd bridge(note.bridge, note.transverse.impedance, rate);
    BowContact bow(note, rate, start.warmth);
    SlipWatch watch(rate, wanted.steps);
    Walker speed(drive.speed), force(drive.force), place(drive.contact_point);
    double contact_point = drive.contact_point.points.front().value;
    const auto place_bow = [&] {
        bow.place(contact_point, string, twist);
        upright.lines().place_bow(contact_point);
    };
    if (start.helmholtz) string.fill_with_helmholtz({contact_point, note.length}, start.speed);
    place_bow();

    Record record = empty_record(wanted);
    for (int t = 0; t < wanted.steps; ++t) {
        const double time = t / rate;
        if (drive.contact_point.points.size() > 1) {
            contact_point = place.at(time);
            place_bow();
        }
        const double pull = turn_at_bridge(bridge, string, upright, note.hair.bridge_lean);
        if (twist.present()) twist.leave_bridge(-twist.wave_at_bridge());
        if (t >= wanted.bridge_from) record.bridge_force.push_back(note.transverse.impedance * pull);
        for (WaveLines* lines : {&string, &twist, &upright.lines()}) lines->turn_at_stop();

        const double bow_speed = speed.at(time);
        const double pressed = upright.present() ? std::max(0.0, force.at(time) + upright.press()) : force.at(time);
        bow.rub(string, twist, {.speed = bow_speed, .force = pressed, .lengthwise = drive.lengthwise});
        watch.see(t, -bow.slip(), bow_speed * note.length / contact_point, bow.slips());
        if (wanted.waveforms) keep_waveforms(record, bow);
        if (!(std::abs(bow.surface()) < senseless_speed)) {
            record.diverged = true;
            break;
        }
        for (WaveLines* lines : {&string, &twist, &upright.lines()}) lines->step();
    }
    record.warmth = bow.warmth();
    watch.finish(record);
    return record;
}

}  // namespace sim::kernel
