// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/force_window.hpp"

#include "sim/limits.hpp"

#include <algorithm>
#include <cmath>

namespace sim {

namespace {

constexpr double scan_ratio = 1.22;    // between neighbouring forces of a usual scan
constexpr double past_maximum = 3.0;   // times the closed form's greatest force
constexpr double under_minimum = 8.0;  // under the player's lightest stroke
constexpr double beyond_playing =
    8.0;  // times the firmest stroke: near the bridge the closed form runs off to forces that break bows

struct Tried {
    double force;
    ForceAnswer answer;
};

struct Edge {
    double force;  // N
    Motion beyond;
};

/// Halves between a force that plays and one that doesn't; the edge is the last force that was seen to play.
Edge find_edge(Tried plays, Tried fails, double precision, const std::function<ForceAnswer(double)>& ask) {
    while (std::abs(std::log(plays.force / fails.force)) > std::log1p(precision)) {
        const double middle = std::sqrt(plays.force * fails.force);
        const ForceAnswer answer = ask(middle);
        (answer.plays ? plays : fails) = {middle, answer};
    }
    return {plays.force, fails.answer.motion};
}

std::optional<std::size_t> main_interval(const std::vector<ForceInterval>& intervals, double middle) {
    if (intervals.empty()) return std::nullopt;
    for (std::size_t i = 0; i < intervals.size(); ++i)
        if (intervals[i].low <= middle && middle <= intervals[i].high) return i;
    const auto widest = std::ranges::max_element(intervals, {}, [](const ForceInterval& i) { return i.high / i.low; });
    return static_cast<std::size_t>(widest - intervals.begin());
}

}  // namespace

ForceWindow find_force_window(const ForceScan& scan, const std::function<ForceAnswer(double)>& ask) {
    std::vector<Tried> tried;
    for (int i = 0; i < scan.steps; ++i) {
        const double force = scan.lowest * std::pow(scan.highest / scan.lowest, i / (scan.steps - 1.0));
        tried.push_back({force, ask(force)});
    }
    ForceWindow window;
    for (std::size_t i = 0; i < tried.size(); ++i) {
        if (!tried[i].answer.plays) continue;
        ForceInterval interval{.low = tried[i].force, .high = tried[i].force, .below = {}, .above = {}};
        if (i > 0) {
            const Edge edge = find_edge(tried[i], tried[i - 1], scan.precision, ask);
            interval.low = edge.force;
            interval.below = edge.beyond;
        }
        while (i + 1 < tried.size() && tried[i + 1].answer.plays) ++i;
        interval.high = tried[i].force;
        if (i + 1 < tried.size()) {
            const Edge edge = find_edge(tried[i], tried[i + 1], scan.precision, ask);
            interval.high = edge.force;
            interval.above = edge.beyond;
        }
        window.intervals.push_back(interval);
    }
    window.main = main_interval(window.intervals, scan.middle);
    return window;
}

ForceScan usual_scan(const Note& note, const Player& player, double contact_point) {
    const Limits closed = limits(note, {contact_point, player.speed});
    ForceScan scan;
    scan.middle = middle_force(player);
    scan.lowest = player.force_low / under_minimum;
    scan.highest =
        std::clamp(past_maximum * closed.schelleng_max, 2.0 * player.force_high, beyond_playing * player.force_high);
    scan.steps = static_cast<int>(std::ceil(std::log(scan.highest / scan.lowest) / std::log(scan_ratio))) + 1;
    return scan;
}

ForceWindow held_window(const Note& note, const Player& player, double contact_point, const ForceScan& scan,
                        int times) {
    const double duration = held_duration(note);
    return find_force_window(scan, [&](double force) {
        const StrokeResult result = play(note,
                                         {.contact_point = contact_point,
                                          .force = force,
                                          .speed = player.speed,
                                          .duration = duration,
                                          .beginning = Beginning::held},
                                         times);
        return ForceAnswer{result.verdict.motion == Motion::helmholtz, result.verdict.motion};
    });
}

ForceWindow started_window(const Note& note, const Player& player, double contact_point, const ForceScan& scan,
                           int times) {
    return find_force_window(scan, [&](double force) {
        const StrokeResult result = play(note, started_stroke(note, player, {contact_point, force}), times);
        return ForceAnswer{speaks(result, note, player), result.verdict.motion};
    });
}

bool speaks(const StrokeResult& result, const Note& note, const Player& player) {
    const double within = std::max(player.speak_time, player.speak_periods / fundamental(note.string));
    return result.verdict.motion == Motion::helmholtz && result.speak_time && *result.speak_time <= within;
}

}  // namespace sim
