// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/start_run.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace sim {

namespace {

constexpr double pull_margin = 1.25;    // waves and the bridge's give make the first slip later than a slow pull's
constexpr double prolonged = 1.14;      // periods: longer than the judge grants two slips of Helmholtz motion
constexpr double least_covered = 0.25;  // of the bow's way until the next slip, by the slip before

constexpr std::array<std::string_view, 2> kind_names{"from-rest", "crossing"};
constexpr std::array<std::string_view, 2> limit_names{"strict", "lenient"};
constexpr std::array<std::string_view, 6> outcome_names{"clean", "late", "slipping", "choked", "wrong motion", "stuck"};

FreeStroke stroke_of(const Note& note, const StartCase& start, const StartPoint& point) {
    const bool from_rest = start.kind == StartKind::from_rest;
    return {.drive = {.speed = from_rest ? rising_profile({start.speed, start.speed / point.pace})
                                         : constant_profile(start.speed),
                      .force = from_rest ? constant_profile(point.force) : rising_profile({point.force, point.pace}),
                      .contact_point = constant_profile(start.contact_point)},
            .start = {},
            .duration = start_duration(note, start, point)};
}

/// When the bow has gone as far as sticking hair can take a slowly pulled string, s.
double slip_by_statics(const Note& note, const StartCase& start, const StartPoint& point) {
    const double ratio = start.contact_point / note.string.length;
    const double stiffness = note.string.tension / (note.string.length * ratio * (1.0 - ratio));
    const double way = sticking_coefficient(note.friction) * point.force / stiffness;
    const double rise = start.speed / point.pace;
    const double way_of_rise = 0.5 * start.speed * rise;
    return way < way_of_rise ? std::sqrt(2.0 * way / point.pace) : rise + (way - way_of_rise) / start.speed;
}

/// From the first main slip to the next, or to the end where none comes.
TimeSpan first_gap(const JudgedStroke& judged, double duration) {
    const double next = judged.slips.size() > 1 ? judged.slips[1].start : duration;
    return {judged.slips.front().start, next};
}

/// What hinders a beginning from rest that has main slips.  A gap longer than a period means too much
/// force only where the slip before it took the string back about as far as the bow goes meanwhile; else the hair
/// slides, or slips in steps too small to count.
StartOutcome fault_from_rest(const StartRun& run, const JudgedStroke& judged, const FreeStroke& stroke) {
    if (run.motion == Motion::s_motion) return StartOutcome::wrong_motion;
    const TimeSpan gap = first_gap(judged, stroke.duration);
    const double bow_way = mean_value(stroke.drive.speed, gap) * (gap.to - gap.from);
    const bool whole = judged.slips.front().distance >= least_covered * bow_way;
    return *run.first_gap > prolonged && whole ? StartOutcome::choked : StartOutcome::slipping;
}

StartOutcome fault_of_crossing(const StartRun& run) {
    if (run.motion == Motion::s_motion) return StartOutcome::wrong_motion;
    const bool too_firm = run.motion == Motion::raucous || run.motion == Motion::anomalous_low;
    return too_firm ? StartOutcome::choked : StartOutcome::slipping;
}

}  // namespace

std::string_view start_kind_name(StartKind kind) { return kind_names[static_cast<std::size_t>(kind)]; }

std::optional<StartKind> start_kind_from_name(std::string_view name) {
    for (std::size_t i = 0; i < kind_names.size(); ++i)
        if (kind_names[i] == name) return static_cast<StartKind>(i);
    return std::nullopt;
}

std::string_view start_limit_name(StartLimit limit) { return limit_names[static_cast<std::size_t>(limit)]; }

std::string_view start_outcome_name(StartOutcome outcome) { return outcome_names[static_cast<std::size_t>(outcome)]; }

double accepted_time(const Acceptance& acceptance, double period) {
    return std::max(acceptance.time, acceptance.periods * period);
}

double start_duration(const Note& note, const StartCase& start, const StartPoint& point) {
    const double period = 1.0 / fundamental(note.string);
    const double until_slip =
        start.kind == StartKind::from_rest ? pull_margin * slip_by_statics(note, start, point) : point.pace;
    return until_slip + accepted_time(start.lenient, period) + listening_time(note);
}

namespace {

StartRun start_of(const Note& note, const StartCase& start, const FreeStroke& stroke, const JudgedStroke& judged) {
    const double period = 1.0 / fundamental(note.string);
    StartRun run{.first_slip = {}, .transient = {}, .first_gap = {}, .motion = judged.verdict.motion};
    StartOutcome fault = StartOutcome::slipping;
    if (!judged.slips.empty()) {
        const TimeSpan gap = first_gap(judged, stroke.duration);
        run.first_slip = gap.from;
        run.first_gap = (gap.to - gap.from) / period;
        if (judged.verdict.helmholtz_from) run.transient = *judged.verdict.helmholtz_from - *run.first_slip;
        fault = start.kind == StartKind::from_rest ? fault_from_rest(run, judged, stroke) : fault_of_crossing(run);
    } else if (judged.slipping_since >= 0.0) {
        run.first_slip = judged.slipping_since;
    } else if (run.motion == Motion::silent && !judged.verdict.never_sticks) {
        fault = StartOutcome::stuck;
    }
    const auto outcome = [&](const Acceptance& limit) {
        if (!run.transient) return fault;
        return *run.transient <= accepted_time(limit, period) ? StartOutcome::clean : StartOutcome::late;
    };
    run.strict = outcome(start.strict);
    run.lenient = outcome(start.lenient);
    return run;
}

}  // namespace

std::vector<StartRun> play_starts(const Note& note, const StartCase& start, std::span<const StartPoint> points,
                                  const Workers& workers, int times) {
    std::vector<FreeJob> jobs(points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
        jobs[i].force_high = std::max(note.force_high, points[i].force);  // the sample rate follows it
        jobs[i].stroke = stroke_of(note, start, points[i]);
    }
    const std::vector<JudgedStroke> judged = play_judged_all(note, jobs, workers, times);
    std::vector<StartRun> runs;
    for (std::size_t i = 0; i < jobs.size(); ++i) runs.push_back(start_of(note, start, jobs[i].stroke, judged[i]));
    return runs;
}

StartRun play_start(const Note& note, const StartCase& start, const StartPoint& point, int times) {
    return play_starts(note, start, {&point, 1}, {.kernel = Kernel::reference}, times).front();
}

}  // namespace sim
