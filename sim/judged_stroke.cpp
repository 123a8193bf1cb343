// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/judged_stroke.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <span>

namespace sim {

namespace {

constexpr double heard_for = 0.1;         // s at the end of a run
constexpr double filter_margin = 0.004;   // s more for the decimation filter's ends
constexpr double least_slip_share = 0.6;  // of the contact ratio, speed laws: as for steady strokes
constexpr double main_distance = 0.1;     // of bow speed * period

}  // namespace

double mean_value(const Profile& profile, const TimeSpan& span) {
    std::vector<double> times{span.from};
    for (const Profile::Point& point : profile.points)
        if (point.time > span.from && point.time < span.to) times.push_back(point.time);
    times.push_back(span.to);
    double area = 0.0;  // between corners the profile is straight: the trapezoid is exact
    for (std::size_t i = 1; i < times.size(); ++i)
        area += 0.5 * (value_at(profile, times[i - 1]) + value_at(profile, times[i])) * (times[i] - times[i - 1]);
    return area / (span.to - span.from);
}

JudgedStroke play_judged(const Note& note, const FreeStroke& stroke, int times) {
    const FreePlayed played = play_freely(note, stroke, times);
    const kernel::Record& record = played.record;
    const double f0 = fundamental(note.string);
    const TimeSpan late{std::max(0.0, stroke.duration - heard_for), stroke.duration};
    const double ratio = mean_value(stroke.drive.contact_point, late) / note.string.length;
    const double speed = mean_value(stroke.drive.speed, late);

    const auto heard = static_cast<std::size_t>((heard_for + filter_margin) * played.sample_rate);
    std::span<const double> bridge_force(record.bridge_force);
    if (bridge_force.size() > heard) bridge_force = bridge_force.last(heard);
    Tone tone;
    if (!record.diverged) tone = tone_of(bridge_force, {played.sample_rate, f0}, note.bridge);

    const double ideal = 2.0 * wave_impedance(note.string) * speed / (std::numbers::pi * ratio);
    const bool speed_law = note.friction.law != FrictionLaw::thermal;
    JudgedStroke judged{.sample_rate = played.sample_rate, .verdict = {}, .slips = {}};
    judged.slipping_since = record.slipping_since;
    judged.verdict = judge(record, stroke.drive.speed,
                           {.period = 1.0 / f0,
                            .contact_ratio = ratio,
                            .duration = stroke.duration,
                            .fundamental_share = ideal > 0.0 ? tone.bridge_fundamental / ideal : 0.0,
                            .least_slip_fraction = speed_law ? least_slip_share * ratio : 0.0});
    for (const kernel::Slip& slip : record.slips)
        if (slip.distance >= main_distance * value_at(stroke.drive.speed, slip.start) / f0)
            judged.slips.push_back(slip);
    return judged;
}

}  // namespace sim
