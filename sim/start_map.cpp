// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/start_map.hpp"

#include <algorithm>
#include <array>

namespace sim {

namespace {

constexpr double forces_beyond = 4.0;                // times either way past the player's range
constexpr double slowest_acceleration = 1.0 / 32.0;  // of the player's own
constexpr double quickest_acceleration = 4.0;
constexpr double shortest_force_rise = 0.1;  // of the player's rise
constexpr double longest_force_rise = 4.0;
constexpr double least_rise = 0.010;  // s
constexpr double map_share = 0.6;     // of the work, for the progress bar
constexpr int varied_runs = 4;

constexpr std::array<StartLimit, 2> limits_named{StartLimit::strict, StartLimit::lenient};

void count(StartCell& cell, const StartRun& run) {
    cell.strict_votes += run.strict == StartOutcome::clean ? 1 : 0;
    cell.lenient_votes += run.lenient == StartOutcome::clean ? 1 : 0;
}

bool agree(const StartRun& a, const StartRun& b) {
    return std::ranges::all_of(limits_named, [&](StartLimit limit) {
        return (a.outcome(limit) == StartOutcome::clean) == (b.outcome(limit) == StartOutcome::clean);
    });
}

/// Does a cell beside, above or below begin otherwise?
bool disagrees(const StartMap& map, std::size_t pace, std::size_t force) {
    const StartRun& run = map.at(pace, force).run;
    return (pace > 0 && !agree(run, map.at(pace - 1, force).run)) ||
           (pace + 1 < map.paces.size() && !agree(run, map.at(pace + 1, force).run)) ||
           (force > 0 && !agree(run, map.at(pace, force - 1).run)) ||
           (force + 1 < map.forces.size() && !agree(run, map.at(pace, force + 1).run));
}

StartPoint varied(StartPoint point, int which, double variation) {
    (which < 2 ? point.force : point.pace) *= which % 2 == 0 ? 1.0 - variation : 1.0 + variation;
    return point;
}

std::vector<std::size_t> unsettled_cells(const StartMap& map) {
    std::vector<std::size_t> unsettled;
    for (std::size_t i = 0; i < map.paces.size(); ++i)
        for (std::size_t j = 0; j < map.forces.size(); ++j)
            if (disagrees(map, i, j)) unsettled.push_back(i * map.forces.size() + j);
    return unsettled;
}

void let_vote(StartMap& map, const Workers& workers) {
    const std::vector<std::size_t> unsettled = unsettled_cells(map);
    std::vector<StartPoint> points;
    for (const std::size_t cell : unsettled)
        for (int which = 0; which < varied_runs; ++which)
            points.push_back(varied(map.cells[cell].point, which, map.plan.variation));
    const std::vector<StartRun> runs = play_starts(map.note, map.plan.start, points, workers);
    for (std::size_t i = 0; i < runs.size(); ++i) {
        StartCell& cell = map.cells[unsettled[i / varied_runs]];
        ++cell.runs;
        count(cell, runs[i]);
    }
}

}  // namespace

StartPlan usual_start_plan(StartKind kind, const Player& player, double contact_point) {
    const double rise = std::max(player.rise, least_rise);
    const double acceleration = player.speed / rise;
    StartPlan plan;
    plan.start = {.kind = kind, .contact_point = contact_point, .speed = player.speed};
    plan.start.lenient = {player.speak_time, player.speak_periods};
    plan.forces = {player.force_low / forces_beyond, player.force_high * forces_beyond};
    plan.paces = kind == StartKind::from_rest
                     ? Range{slowest_acceleration * acceleration, quickest_acceleration * acceleration}
                     : Range{shortest_force_rise * rise, longest_force_rise * rise};
    return plan;
}

StartMap start_map(const Note& note, const StartPlan& plan, const Workers& workers) {
    StartMap map{.note = note, .plan = plan, .forces = {}, .paces = {}, .cells = {}};
    map.forces = even_in_ratio(plan.forces, plan.force_count);
    map.paces = even_in_ratio(plan.paces, plan.pace_count);
    map.cells.resize(map.forces.size() * map.paces.size());
    std::vector<StartPoint> points;
    for (const double pace : map.paces)
        for (const double force : map.forces) points.push_back({.force = force, .pace = pace});
    const std::vector<StartRun> runs = play_starts(map.note, plan.start, points, part_of(workers, {0.0, map_share}));
    for (std::size_t i = 0; i < runs.size(); ++i) {
        StartCell& cell = map.cells[i];
        cell.point = points[i];
        cell.run = runs[i];
        count(cell, cell.run);
    }
    let_vote(map, part_of(workers, {map_share, 1.0}));
    return map;
}

}  // namespace sim
