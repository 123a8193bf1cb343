// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/reference_run.hpp"
#include "sim/kernel/slip_watch.hpp"

#include <algorithm>

namespace sim::kernel {

namespace {

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
    const double time_step = 1.0 / rate;
    const bool moves = drive.contact_point.points.size() > 1;
    double contact_point = drive.contact_point.points.front().value;
    ReferenceRun run(note, start, contact_point);
    run.place_bow(contact_point);
    SlipWatch watch(rate);
    Walker speed(drive.speed), force(drive.force), place(drive.contact_point);

    Record record = empty_record(wanted);
    for (int t = 0; t < wanted.steps; ++t) {
        const double time = t / rate;
        if (moves) run.place_bow(contact_point = place.at(time));
        const double bow_speed = speed.at(time);
        const double pull = run.advance({.speed = bow_speed, .force = force.at(time), .lengthwise = drive.lengthwise});
        if (t >= wanted.bridge_from) record.bridge_force.push_back(pull);
        const BowContact& bow = run.bow();
        if (bow.slips() && t >= wanted.steps / 2) record.slipped_time_late += time_step;
        if (watch.see(t, -bow.slip(), bow_speed * note.length / contact_point)) record.slips.push_back(watch.slip());
        if (wanted.waveforms) keep_waveforms(record, bow);
        if (run.diverged()) {
            record.diverged = true;
            break;
        }
        run.step();
    }
    record.warmth = run.bow().warmth();
    record.slipping_since = watch.slips() ? watch.slip().start : -1.0;
    return record;
}

}  // namespace sim::kernel
