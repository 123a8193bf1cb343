// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/bridge_end.hpp"
#include "sim/kernel/end_filter.hpp"
#include "sim/kernel/note.hpp"
#include "sim/kernel/rosin.hpp"
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

void keep_waveforms(Record& record, const Rosin& rosin, double surface, double friction) {
    record.velocity.push_back(surface);
    record.friction.push_back(friction);
    record.temperature.push_back(rosin.temperature());
    record.slipping.push_back(rosin.slips() ? 1 : 0);
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
    BridgeEnd bridge(note.bridge, note.transverse.impedance, rate);
    Rosin rosin(note.contact, rate, start.warmth);
    SlipWatch watch(rate, wanted.steps);
    Walker speed(drive.speed), force(drive.force), place(drive.contact_point);
    const bool moves = drive.contact_point.points.size() > 1;
    double contact_point = drive.contact_point.points.front().value;
    if (start.helmholtz) string.fill_with_helmholtz({contact_point, note.length}, start.speed);
    string.place_bow(contact_point);
    twist.place_bow(contact_point);

    Record record = empty_record(wanted);
    for (int t = 0; t < wanted.steps; ++t) {
        const double time = t / rate;
        if (moves) {
            contact_point = place.at(time);
            string.place_bow(contact_point);
            twist.place_bow(contact_point);
        }
        const double in = string.wave_at_bridge();
        const double out = bridge.reflect(in);
        string.leave_bridge(out);
        if (twist.present()) twist.leave_bridge(-twist.wave_at_bridge());
        if (t >= wanted.bridge_from) record.bridge_force.push_back(note.transverse.impedance * (in - out));
        string.turn_at_stop();
        twist.turn_at_stop();

        const double bow_speed = speed.at(time);
        const double free_surface = string.velocity_at_bow() + twist.velocity_at_bow();
        const double yield = string.yield() + twist.yield();
        const double friction = rosin.rub(free_surface - bow_speed, yield, force.at(time));
        string.push(friction);
        twist.push(friction);
        watch.see(t, -rosin.slip(), bow_speed * note.length / contact_point, rosin.slips());
        if (wanted.waveforms) keep_waveforms(record, rosin, free_surface + yield * friction, friction);
        if (!(std::abs(free_surface) < senseless_speed)) {
            record.diverged = true;
            break;
        }
        string.step();
        twist.step();
    }
    record.warmth = rosin.heat().warmth();
    watch.finish(record);
    return record;
}

}  // namespace sim::kernel
