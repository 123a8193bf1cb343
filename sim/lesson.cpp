// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/lesson.hpp"

#include "sim/sound/render.hpp"
#include "sim/sound/takes.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <iterator>

namespace sim {
namespace {

constexpr double octave = 12.0;
constexpr double same_stop = 1e-9;
constexpr double gap = 0.1;  // s, between the stops of the whole climb

// Shares of a lesson's work, for the progress bar.
constexpr double climb_done = 0.8;
constexpr double window_done = 0.93;

std::size_t index_of(const std::vector<ClimbStop>& stops, double stop) {
    const auto found =
        std::ranges::find_if(stops, [&](const ClimbStop& of) { return std::abs(of.note.stop - stop) < same_stop; });
    assert(found != stops.end());
    return static_cast<std::size_t>(found - stops.begin());
}

RuleAnswer rule_of(const Climb& climb) {
    std::vector<RulePlace> places;
    for (const ClimbStop& stop : climb.stops)
        if (stop.band.best) places.push_back({stop.note.stop, stop.note.string.length, *stop.band.best});
    return judge_rule(places);
}

std::size_t nearest_to_octave(const Lesson& lesson) {
    const auto distance = [&](const HeardStop& heard) {
        return std::abs(lesson.climb.stops[heard.index].note.stop - octave);
    };
    return std::ranges::min_element(lesson.heard, {}, distance)->index;
}

/// One gain for all that is heard.
void add_sounds(Lesson& lesson, const LessonPlan& plan, const Workers& workers) {
    const sound::StopTakes takes = sound::stop_takes(lesson.climb, plan.seconds, workers);
    std::array<analysis::Signal, 2> whole{sound::concatenate(takes.left_behind, gap),
                                          sound::concatenate(takes.follows, gap)};
    const double gain = sound::share_gain(whole);
    const auto scaled = [&](analysis::Signal signal) {
        for (double& sample : signal.samples) sample *= gain;
        return signal;
    };
    for (HeardStop& heard : lesson.heard) {
        const ClimbStop& stop = lesson.climb.stops[heard.index];
        if (stop.left_behind.stroke) heard.left_behind = scaled(takes.left_behind[heard.index]);
        if (stop.follows) heard.follows = scaled(takes.follows[heard.index]);
    }
    lesson.whole_left_behind = std::move(whole[0]);
    lesson.whole_follows = std::move(whole[1]);
}

}  // namespace

std::vector<double> usual_heard(const std::vector<double>& stops) {
    assert(!stops.empty());
    std::vector<double> heard{stops.front()};
    for (const double stop : {7.0, octave, 19.0})
        if (std::ranges::binary_search(stops, stop) && stop > heard.back()) heard.push_back(stop);
    if (stops.back() > heard.back()) heard.push_back(stops.back());
    return heard;
}

Lesson make_lesson(const Preset& preset, const PresetString& string, const LessonPlan& plan, const Workers& workers) {
    assert(!plan.heard.empty());
    Lesson lesson;
    lesson.climb = find_climb(preset, string, preset.player, plan.climb, part_of(workers, {0.0, climb_done}));
    lesson.rule = rule_of(lesson.climb);
    for (const double stop : plan.heard)
        lesson.heard.push_back({.index = index_of(lesson.climb.stops, stop), .left_behind = {}, .follows = {}});
    lesson.shown = nearest_to_octave(lesson);
    WindowPlan window;
    window.grid = plan.climb.grid;
    window.grid.more_forces = window.grid.player_forces / 2;
    window.held_points = 0;
    lesson.window = find_window(lesson.climb.stops[lesson.shown].note, preset.player, window,
                                part_of(workers, {climb_done, window_done}));
    add_sounds(lesson, plan, part_of(workers, {window_done, 1.0}));
    return lesson;
}

}  // namespace sim
