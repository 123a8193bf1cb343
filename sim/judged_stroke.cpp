// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/judged_stroke.hpp"

#include "sim/kernel/lanes.hpp"
#include "sim/stroke_batch.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

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

namespace {

struct Run {
    double sample_rate;  // Hz
    kernel::Wanted wanted;
};

Run run_of(const Note& note, const FreeStroke& stroke, int times) {
    Run run{.sample_rate = sample_rate(note, smallest_value(stroke.drive.contact_point), times), .wanted = {}};
    run.wanted.steps = static_cast<int>(std::lround(stroke.duration * run.sample_rate));
    run.wanted.bridge_from = std::max(0, run.wanted.steps - static_cast<int>(judged_for * run.sample_rate));
    return run;
}

JudgedStroke judged_run(const Note& note, const FreeStroke& stroke, const Run& run, const kernel::Record& record) {
    const TimeSpan late{std::max(0.0, stroke.duration - heard_for), stroke.duration};
    const Profile& speed = stroke.drive.speed;
    const Judged answer = judged(note, record, run.sample_rate,
                                 {.speed = speed,
                                  .last_speed = mean_value(speed, late),
                                  .contact_point = mean_value(stroke.drive.contact_point, late),
                                  .duration = stroke.duration});
    return {.sample_rate = run.sample_rate,
            .verdict = answer.verdict,
            .slips = main_slips(record, speed, 1.0 / fundamental(note.string)),
            .slipping_since = record.slipping_since};
}

JudgedStroke judged_by_reference(const Note& note, const FreeStroke& stroke, const Run& run) {
    return judged_run(
        note, stroke, run,
        kernel::run_reference(kernel_note(note, run.sample_rate), stroke.drive, stroke.start, run.wanted));
}

using Pack = std::vector<std::size_t>;

/// Those of one sample rate, place and lengthwise speed together, the ones that last about as long beside each other.
std::vector<Pack> packs_of(std::span<const FreeJob> jobs, const std::vector<Run>& runs) {
    const auto alike = [&](std::size_t a, std::size_t b) {
        const kernel::Drive& one = jobs[a].stroke.drive;
        const kernel::Drive& other = jobs[b].stroke.drive;
        return runs[a].sample_rate == runs[b].sample_rate && one.contact_point == other.contact_point &&
               one.lengthwise == other.lengthwise;
    };
    std::vector<std::size_t> order(jobs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {},
                             [&](std::size_t i) { return std::pair(runs[i].sample_rate, runs[i].wanted.steps); });
    std::vector<Pack> packs;
    for (const std::size_t i : order) {
        if (packs.empty() || packs.back().size() == kernel::LaneBatch::capacity || !alike(packs.back().front(), i))
            packs.emplace_back();
        packs.back().push_back(i);
    }
    return packs;
}

void play_pack(const Note& note, std::span<const FreeJob> jobs, const std::vector<Run>& runs, const Pack& pack,
               std::vector<JudgedStroke>& results) {
    std::vector<kernel::LaneStroke> lanes;
    for (const std::size_t i : pack) {
        const FreeStroke& stroke = jobs[i].stroke;
        lanes.push_back({stroke.drive.speed, stroke.drive.force, stroke.start, runs[i].wanted});
    }
    const FreeStroke& first = jobs[pack.front()].stroke;
    const kernel::Note ready = kernel_note(note, runs[pack.front()].sample_rate);
    const std::vector<kernel::Record> records = kernel::run_lanes(ready, first.drive, lanes);
    for (std::size_t k = 0; k < pack.size(); ++k)
        results[pack[k]] = judged_run(note, jobs[pack[k]].stroke, runs[pack[k]], records[k]);
}

}  // namespace

JudgedStroke play_judged(const Note& note, const FreeStroke& stroke, int times) {
    const Run run = run_of(note, stroke, times);
    return judged_by_reference(note, stroke, run);
}

std::vector<JudgedStroke> play_judged_all(const Note& note, std::span<const FreeJob> jobs, const Workers& workers,
                                          int times) {
    std::vector<JudgedStroke> results(jobs.size());
    std::vector<Run> runs;
    Note firm = note;
    for (const FreeJob& job : jobs) {
        firm.force_high = job.force_high;
        runs.push_back(run_of(firm, job.stroke, times));
    }
    if (!plays_in_lanes(note, workers)) {
        for_each_job(static_cast<int>(jobs.size()), workers, [&](int job) {
            const auto i = static_cast<std::size_t>(job);
            results[i] = judged_by_reference(note, jobs[i].stroke, runs[i]);
        });
        return results;
    }
    const std::vector<Pack> packs = packs_of(jobs, runs);
    for_each_job(static_cast<int>(packs.size()), workers,
                 [&](int job) { play_pack(note, jobs, runs, packs[static_cast<std::size_t>(job)], results); });
    return results;
}

}  // namespace sim
