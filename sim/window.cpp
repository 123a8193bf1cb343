// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/window.hpp"

#include "analysis/units.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace sim {

namespace {

constexpr double map_share = 0.5;  // of a window's work, for the progress bar

WindowPoint point_at(const Assessment& assessment, const StrokeMap& map, double contact_point) {
    const Note& note = map.note;
    WindowPoint point{.security = assessment.at(contact_point), .speaking = {}, .held = {}, .limits = {}, .middle = {}};
    point.contact_ratio = contact_point / note.string.length;
    point.limits = limits(note, {contact_point, map.player.speed});
    return point;
}

/// The map's own strokes have answered the scan: only the edges need new strokes.
ForceWindow speaking_window(const StrokeMap& map, std::size_t contact, const Workers& workers) {
    const double place = map.contact_points[contact];
    const ForceScan scan{.lowest = map.forces.front(),
                         .highest = map.forces.back(),
                         .steps = static_cast<int>(map.forces.size()),
                         .middle = middle_force(map.player),
                         .kernel = workers.kernel,
                         .stop = workers.stop};
    bool scanned = false;  // the scan comes first, at the map's forces
    return find_force_window(scan, [&](std::span<const double> forces) {
        if (std::exchange(scanned, true))
            return started_answers(map.note, map.player, {place, forces, scan.kernel, scan.stop});
        std::vector<ForceAnswer> answers;
        for (std::size_t j = 0; j < map.forces.size(); ++j) {
            const StrokeResult& result = map.at(contact, j);
            answers.push_back({speaks(result, map.note, map.player), result.verdict.motion});
        }
        return answers;
    });
}

StrokeResult middle_of(const StrokeMap& map, std::size_t contact) {
    return map.at(contact, map.first_player_force + map.player_force_count / 2);
}

/// Which of `count` points get a held window: `wanted` of them, spread evenly.
std::vector<std::size_t> spread(std::size_t count, int wanted) {
    std::vector<std::size_t> chosen;
    const std::size_t n = std::min(count, static_cast<std::size_t>(std::max(0, wanted)));
    for (std::size_t i = 0; i < n; ++i) chosen.push_back(n == 1 ? count / 2 : i * (count - 1) / (n - 1));
    return chosen;
}

std::string how_far(double metres) { return fixed_number(analysis::mm_from_metres(std::abs(metres)), 0) + " mm"; }

std::string advice_for(const HereResult& here) {
    if (!here.band.best) return "No stroke of this range speaks anywhere on this note; try another force or speed.";
    const double place = here.point.security.contact_point;
    const double best = *here.band.best;
    const std::string way = best < place ? " towards the bridge" : " away from the bridge";
    if (!here.band.band)
        return "No place on this note is secure enough to be called a band; the best lies " + how_far(best - place) +
               way + ".";
    if (*here.from_near >= 0.0 && *here.from_far >= 0.0) return "This place lies in the band; nothing needs to change.";
    const bool too_far = *here.from_far < 0.0;
    const double least = too_far ? *here.from_far : *here.from_near;
    return "Move at least " + how_far(least) + way + " to enter the band, " + how_far(best - place) +
           " to its best place; here strokes fail mostly by: " + std::string(fault_name(here.point.security.fails_by)) +
           ".";
}

}  // namespace

Window find_window(const Note& note, const Player& player, const WindowPlan& plan, const Workers& workers) {
    Window window{.map = started_map(note, player, plan.grid, part_of(workers, {0.0, map_share})),
                  .faults = {},
                  .points = {},
                  .band = {}};
    const StrokeMap& map = window.map;
    const Assessment assessment(map, player);
    for (std::size_t x = 0; x < map.contact_points.size(); ++x)
        for (std::size_t j = 0; j < map.forces.size(); ++j) window.faults.push_back(assessment.fault(x, j));
    window.band = find_band(assessment, map, player);

    std::vector<std::size_t> shown;
    for (std::size_t x = 0; x < map.contact_points.size(); ++x) {
        const double place = map.contact_points[x];
        if (place >= plan.near_limit.value_or(0.0) && place <= plan.far_limit.value_or(note.string.length))
            shown.push_back(x);
    }
    for (std::size_t x : shown) {
        window.points.push_back(point_at(assessment, map, map.contact_points[x]));
        window.points.back().middle = middle_of(map, x);
    }
    const std::vector<std::size_t> held = spread(shown.size(), plan.held_points);
    const int jobs = static_cast<int>(held.size() + shown.size());
    for_each_job(jobs, part_of(workers, {map_share, 1.0}), [&](int job) {
        const auto i = static_cast<std::size_t>(job);
        if (i < held.size()) {  // the longest jobs first
            WindowPoint& point = window.points[held[i]];
            const double place = point.security.contact_point;
            point.held = held_window(note, player, place, usual_scan(note, player, place, workers));
        } else {
            window.points[i - held.size()].speaking = speaking_window(map, shown[i - held.size()], workers);
        }
    });
    return window;
}

HereResult bow_here(const Note& note, const Player& player, double contact_point, const WindowPlan& plan,
                    const Workers& workers) {
    check_contact(note, contact_point);
    const StrokeMap map = started_map(note, player, plan.grid, part_of(workers, {0.0, map_share}));
    const Assessment assessment(map, player);
    HereResult here{.point = point_at(assessment, map, contact_point),
                    .band = find_band(assessment, map, player),
                    .from_near = {},
                    .from_far = {},
                    .advice = {}};
    const ForceScan scan = usual_scan(note, player, contact_point, workers);
    for_each_job(3, part_of(workers, {map_share, 1.0}), [&](int job) {
        if (job == 0) here.point.held = held_window(note, player, contact_point, scan);
        if (job == 1) here.point.speaking = started_window(note, player, contact_point, scan);
        if (job == 2) here.point.middle = play(note, started_stroke(note, player, {contact_point, scan.middle}));
    });
    if (here.band.band) {
        here.from_near = contact_point - here.band.band->near;
        here.from_far = here.band.band->far - contact_point;
    }
    here.advice = advice_for(here);
    return here;
}

std::optional<double> forgiveness(const ForceWindow& window) {
    if (!window.main) return std::nullopt;
    const ForceInterval& interval = window.intervals[*window.main];
    return analysis::db_from_ratio(interval.high / interval.low);
}

}  // namespace sim
