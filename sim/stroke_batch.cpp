// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/stroke_batch.hpp"

#include "analysis/decimate.hpp"
#include "sim/kernel/lanes.hpp"
#include "sim/stroke_run.hpp"
#include "sim/tone_meter.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace sim {

namespace {

constexpr int steps_between_looks = 8192;  // at the stop token; some milliseconds

/// Which strokes go into one batch of lanes.
using Pack = std::vector<std::size_t>;

/// Strokes of one place together; those that last about as long beside each other.
std::vector<Pack> packs_of(std::span<const Stroke> strokes) {
    std::vector<std::size_t> order(strokes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto place = [&](std::size_t i) { return std::pair(strokes[i].contact_point, strokes[i].lengthwise); };
    std::ranges::stable_sort(order, {}, [&](std::size_t i) { return std::tuple(place(i), strokes[i].duration); });
    std::vector<Pack> packs;
    for (const std::size_t i : order) {
        const bool fits = !packs.empty() && packs.back().size() < kernel::LaneBatch::capacity &&
                          place(packs.back().front()) == place(i);
        if (!fits) packs.emplace_back();
        packs.back().push_back(i);
    }
    return packs;
}

/// The ends of a batch's forces, thinned out lane by lane.
std::vector<ToneMeter::Heard> heard_of(const Note& note, const kernel::LaneBatch& batch, double sample_rate) {
    const int factor = analysis::decimation_factor(sample_rate, analysis::analysis_rate);
    std::vector<ToneMeter::Heard> ends;
    for (kernel::LaneBatch::Heard& heard : batch.heard(analysis::decimation_taps(factor), factor))
        ends.push_back({.force = {std::move(heard.samples), sample_rate / factor},
                        .peak_to_peak = heard.peak_to_peak,
                        .expected_hz = fundamental(note.string)});
    return ends;
}

/// What all packs of a call share.
struct Call {
    const Note& note;
    std::span<const Stroke> strokes;
    const Workers& workers;
    int times;
    const StrokeTaker* take;  ///< may be null
};

void play_pack(const Call& call, const Pack& pack, std::vector<StrokeResult>& results) {
    const Note& note = call.note;
    std::vector<StrokeRun> runs;
    std::vector<kernel::LaneStroke> lanes;
    for (const std::size_t i : pack) {
        runs.push_back(run_of(note, call.strokes[i], call.times));
        const StrokeRun& run = runs.back();
        lanes.push_back({.speed = run.drive.speed, .force = run.drive.force, .start = run.start, .wanted = run.wanted});
    }
    const StrokeRun& first = runs.front();
    kernel::LaneBatch batch(kernel_note(note, first.sample_rate), first.drive.contact_point, first.drive.lengthwise,
                            lanes);
    const bool alike =
        std::ranges::all_of(runs, [&](const StrokeRun& run) { return run.wanted.steps == first.wanted.steps; });
    if (alike) batch.listen_from(first.wanted.bridge_from);
    while (batch.steps_left() > 0) {
        if (call.workers.stop.stop_requested()) throw Stopped();
        batch.advance(std::min(batch.steps_left(), steps_between_looks));
    }
    const std::vector<kernel::Record> records = batch.take_records();
    const auto ends = alike ? heard_of(note, batch, first.sample_rate) : std::vector<ToneMeter::Heard>();
    ToneMeter meter(note.bridge);
    for (std::size_t k = 0; k < pack.size(); ++k) {
        const Stroke& stroke = call.strokes[pack[k]];
        StrokeResult& result = results[pack[k]];
        result = alike ? result_of(note, stroke, runs[k], HeardRun{records[k], meter.tone(ends[k])})
                       : result_of(note, stroke, runs[k], records[k]);
        if (call.take != nullptr && alike) (*call.take)(pack[k], ends[k].force, result);
    }
}

/// By the reference, its end thinned out and handed over.
StrokeResult play_taken(const Call& call, std::size_t stroke) {
    const StrokeRun run = run_of(call.note, call.strokes[stroke], call.times);
    const kernel::Record record =
        kernel::run_reference(kernel_note(call.note, run.sample_rate), run.drive, run.start, run.wanted);
    const StrokeResult result = result_of(call.note, call.strokes[stroke], run, record);
    (*call.take)(stroke, analysis::decimated_for_analysis(record.bridge_force, run.sample_rate), result);
    return result;
}

std::vector<StrokeResult> play_call(const Call& call) {
    std::vector<StrokeResult> results(call.strokes.size());
    if (!plays_in_lanes(call.note, call.workers)) {
        for_each_job(static_cast<int>(call.strokes.size()), call.workers, [&](int job) {
            const auto i = static_cast<std::size_t>(job);
            results[i] = call.take != nullptr ? play_taken(call, i) : play(call.note, call.strokes[i], call.times);
        });
        return results;
    }
    const std::vector<Pack> packs = packs_of(call.strokes);
    for_each_job(static_cast<int>(packs.size()), call.workers,
                 [&](int job) { play_pack(call, packs[static_cast<std::size_t>(job)], results); });
    return results;
}

}  // namespace

std::vector<StrokeResult> play_all(const Note& note, std::span<const Stroke> strokes, const Workers& workers,
                                   int times) {
    return play_call({.note = note, .strokes = strokes, .workers = workers, .times = times, .take = nullptr});
}

std::vector<StrokeResult> play_all_heard(const Note& note, std::span<const Stroke> strokes, const Workers& workers,
                                         const StrokeTaker& take) {
    return play_call({.note = note, .strokes = strokes, .workers = workers, .times = 1, .take = &take});
}

bool plays_in_lanes(const Note& note, const Workers& workers) {
    return workers.kernel == Kernel::lanes && note.bow.hair_points <= kernel::LaneBatch::most_hair_points;
}

std::size_t strokes_at_once(Kernel kernel) { return kernel == Kernel::lanes ? kernel::LaneBatch::capacity : 1; }

Stroke held_stroke(const Note& note, const Player& player, const Touch& touch) {
    return {.contact_point = touch.contact_point,
            .force = touch.force,
            .speed = player.speed,
            .duration = held_duration(note),
            .beginning = Beginning::held};
}

}  // namespace sim
