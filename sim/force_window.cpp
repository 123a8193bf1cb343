// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/force_window.hpp"

#include "sim/limits.hpp"
#include "sim/stroke_batch.hpp"

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

/// An edge: the last force that was seen to play, and the first beyond it that was seen not to.
struct Edge {
    Tried plays;
    Tried fails;

    double ratio() const { return std::abs(std::log(plays.force / fails.force)); }
};

/// Asks all edges still wider than the precision at once, at forces even in ratio between their ends, and keeps of
/// each what lies about the first change seen from the force that plays; until none is left.
void narrow(std::vector<Edge>& edges, const ForceScan& scan, const AskForces& ask) {
    const std::size_t at_once = strokes_at_once(scan.kernel);
    while (true) {
        std::vector<Edge*> open;
        for (Edge& edge : edges)
            if (edge.ratio() > std::log1p(scan.precision)) open.push_back(&edge);
        if (open.empty()) return;
        const std::size_t each = std::max<std::size_t>(1, at_once / open.size());
        std::vector<double> forces;
        for (const Edge* edge : open)
            for (std::size_t i = 1; i <= each; ++i)
                forces.push_back(edge->plays.force * std::pow(edge->fails.force / edge->plays.force,
                                                              static_cast<double>(i) / static_cast<double>(each + 1)));
        const std::vector<ForceAnswer> answers = ask(forces);
        std::size_t next = 0;
        for (Edge* edge : open) {
            const std::size_t end = next + each;
            while (next < end && answers[next].plays) {
                edge->plays = {forces[next], answers[next]};
                ++next;
            }
            if (next < end) edge->fails = {forces[next], answers[next]};
            next = end;
        }
    }
}

std::optional<std::size_t> main_interval(const std::vector<ForceInterval>& intervals, double middle) {
    if (intervals.empty()) return std::nullopt;
    for (std::size_t i = 0; i < intervals.size(); ++i)
        if (intervals[i].low <= middle && middle <= intervals[i].high) return i;
    const auto widest = std::ranges::max_element(intervals, {}, [](const ForceInterval& i) { return i.high / i.low; });
    return static_cast<std::size_t>(widest - intervals.begin());
}

}  // namespace

ForceWindow find_force_window(const ForceScan& scan, const AskForces& ask) {
    std::vector<double> forces;
    for (int i = 0; i < scan.steps; ++i)
        forces.push_back(scan.lowest * std::pow(scan.highest / scan.lowest, i / (scan.steps - 1.0)));
    const std::vector<ForceAnswer> answers = ask(forces);
    const auto tried = [&](std::size_t i) { return Tried{forces[i], answers[i]}; };
    std::vector<Edge> edges;
    for (std::size_t i = 1; i < forces.size(); ++i) {
        if (answers[i - 1].plays == answers[i].plays) continue;
        edges.push_back(answers[i].plays ? Edge{tried(i), tried(i - 1)} : Edge{tried(i - 1), tried(i)});
    }
    narrow(edges, scan, ask);

    ForceWindow window;
    auto edge = edges.begin();
    for (std::size_t i = 0; i < forces.size(); ++i) {
        if (!answers[i].plays) continue;
        ForceInterval interval{.low = forces[i], .high = forces[i], .below = {}, .above = {}};
        if (i > 0) {
            interval.low = edge->plays.force;
            interval.below = edge++->fails.answer.motion;
        }
        while (i + 1 < forces.size() && answers[i + 1].plays) ++i;
        interval.high = forces[i];
        if (i + 1 < forces.size()) {
            interval.high = edge->plays.force;
            interval.above = edge++->fails.answer.motion;
        }
        window.intervals.push_back(interval);
    }
    window.main = main_interval(window.intervals, scan.middle);
    return window;
}

ForceWindow find_force_window(const ForceScan& scan, const std::function<ForceAnswer(double)>& ask) {
    return find_force_window(scan, [&](std::span<const double> forces) {
        std::vector<ForceAnswer> answers;
        for (const double force : forces) answers.push_back(ask(force));
        return answers;
    });
}

ForceScan usual_scan(const Note& note, const Player& player, double contact_point, const Workers& workers) {
    const Limits closed = limits(note, {contact_point, player.speed});
    ForceScan scan;
    scan.kernel = workers.kernel;
    scan.stop = workers.stop;
    scan.middle = middle_force(player);
    scan.lowest = player.force_low / under_minimum;
    scan.highest =
        std::clamp(past_maximum * closed.schelleng_max, 2.0 * player.force_high, beyond_playing * player.force_high);
    scan.steps = static_cast<int>(std::ceil(std::log(scan.highest / scan.lowest) / std::log(scan_ratio))) + 1;
    return scan;
}

ForceWindow held_window(const Note& note, const Player& player, double contact_point, const ForceScan& scan,
                        int times) {
    return find_force_window(scan, [&](std::span<const double> forces) {
        std::vector<Stroke> strokes;
        for (const double force : forces) strokes.push_back(held_stroke(note, player, {contact_point, force}));
        std::vector<ForceAnswer> answers;
        for (const StrokeResult& result : play_all(note, strokes, {.kernel = scan.kernel, .stop = scan.stop}, times))
            answers.push_back({result.verdict.motion == Motion::helmholtz, result.verdict.motion});
        return answers;
    });
}

ForceWindow started_window(const Note& note, const Player& player, double contact_point, const ForceScan& scan,
                           int times) {
    return find_force_window(scan, [&](std::span<const double> forces) {
        return started_answers(note, player, {contact_point, forces, scan.kernel, scan.stop}, times);
    });
}

std::vector<ForceAnswer> started_answers(const Note& note, const Player& player, const StartedForces& asked,
                                         int times) {
    std::vector<Stroke> strokes;
    for (const double force : asked.forces)
        strokes.push_back(started_stroke(note, player, {asked.contact_point, force}));
    std::vector<ForceAnswer> answers;
    for (const StrokeResult& result : play_all(note, strokes, {.kernel = asked.kernel, .stop = asked.stop}, times))
        answers.push_back({speaks(result, note, player), result.verdict.motion});
    return answers;
}

bool speaks(const StrokeResult& result, const Note& note, const Player& player) {
    const double within = std::max(player.speak_time, player.speak_periods / fundamental(note.string));
    return result.verdict.motion == Motion::helmholtz && result.speak_time && *result.speak_time <= within;
}

}  // namespace sim
