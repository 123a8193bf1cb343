// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/passage_path.hpp"

#include <algorithm>
#include <cmath>

namespace sim::passage {

namespace {

constexpr double usual_step = 0.5e-3;  // m, between places of the grid
constexpr double least_step = 0.25e-3;
constexpr double longest_stretch = 0.25;         // s
constexpr int most_stretches = 16;               // of a note
constexpr double way_cost = 1.0 / 24.0 / 10e-3;  // of a note's security per m of way
constexpr double pull_to_best = 0.05;            // of security per unit of log distance from the best place
constexpr double cant_stand = -1.0;              // worth of a place where no bow can stand
constexpr double least_rest = 1e-6;              // s

void add_note(const BowedNote& note, double limit, std::vector<PathStretch>& stretches) {
    const int count = std::clamp(static_cast<int>(std::ceil(note.duration / longest_stretch)), 1, most_stretches);
    const PathStretch one{.duration = note.duration / count, .limit = limit, .worth = note.kind, .weight = 1.0 / count};
    stretches.insert(stretches.end(), static_cast<std::size_t>(count), one);
}

std::vector<PathStretch> stretches_of(const Passage& passage) {
    std::vector<PathStretch> stretches;
    double silent_from = passage.notes.front().start;
    for (const BowedNote& note : passage.notes) {
        const double rest = note.start - silent_from;
        if (rest > least_rest) stretches.push_back({.duration = rest, .limit = passage.plan.lifted_travel});
        add_note(note, passage.plan.travel, stretches);
        silent_from = note.start + note.duration;
    }
    return stretches;
}

/// Fine enough that the bow can move at all within the shortest stretch.
double step_for(const std::vector<PathStretch>& stretches) {
    double step = usual_step;
    for (const PathStretch& stretch : stretches) step = std::min(step, stretch.limit * stretch.duration);
    return std::max(step, least_step);
}

std::vector<double> places_for(const std::vector<NoteKind>& kinds, double step) {
    const double low = kinds.front().note.floor;
    double high = farthest_contact(kinds.front().note);
    for (const NoteKind& kind : kinds) high = std::max(high, farthest_contact(kind.note));
    const auto count = static_cast<int>(std::ceil((high - low) / step)) + 1;
    std::vector<double> places;
    for (int i = 0; i < std::max(count, 2); ++i) places.push_back(low + i * step);
    return places;
}

double worth_at(const NoteKind& kind, const Assessment& assessment, double place) {
    if (!can_stand(kind.note, place)) return cant_stand;
    const double security = assessment.at(place).security;
    const auto& best = kind.band.best;
    return best ? security - pull_to_best * std::abs(std::log(place / *best)) : security;
}

}  // namespace

PathProblem path_problem(const Passage& passage, const std::vector<std::unique_ptr<KindStudy>>& studies,
                         const Workers& workers) {
    PathProblem problem{.places = {}, .worths = {}, .stretches = stretches_of(passage), .travel_cost = way_cost};
    problem.places = places_for(passage.kinds, step_for(problem.stretches));
    problem.worths.resize(studies.size());
    for_each_job(static_cast<int>(studies.size()), workers, [&](int job) {
        const auto i = static_cast<std::size_t>(job);
        for (const double place : problem.places)
            problem.worths[i].push_back(worth_at(passage.kinds[i], studies[i]->assessment, place));
    });
    return problem;
}

Profile path_in_time(const PathProblem& problem, const BowPath& path, double start) {
    Profile profile{{{start, problem.places[path.front()]}}};
    double time = start;
    for (std::size_t k = 0; k < problem.stretches.size(); ++k) {
        time += problem.stretches[k].duration;
        profile.points.push_back({time, problem.places[path[k + 1]]});
    }
    return profile;
}

}  // namespace sim::passage
