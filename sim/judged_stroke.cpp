// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/judged_stroke.hpp"

#include <algorithm>

namespace sim {

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
    const TimeSpan late{std::max(0.0, stroke.duration - heard_for), stroke.duration};
    const Profile& speed = stroke.drive.speed;
    const Judged answer = judged(note, played.record, played.sample_rate,
                                 {.speed = speed,
                                  .last_speed = mean_value(speed, late),
                                  .contact_point = mean_value(stroke.drive.contact_point, late),
                                  .duration = stroke.duration});
    return {.sample_rate = played.sample_rate,
            .verdict = answer.verdict,
            .slips = main_slips(played.record, speed, 1.0 / fundamental(note.string)),
            .slipping_since = played.record.slipping_since};
}

}  // namespace sim
