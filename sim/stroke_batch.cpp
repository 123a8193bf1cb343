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

/// The tones of a batch whose strokes end together, its force thinned out lane by lane.
std::vector<Tone> tones_of(const Note& note, const kernel::LaneBatch& batch, double sample_rate) {
    const int factor = analysis::decimation_factor(sample_rate, analysis::analysis_rate);
    ToneMeter meter(note.bridge);
    std::vector<Tone> tones;
    for (kernel::LaneBatch::Heard& heard : batch.heard(analysis::decimation_taps(factor), factor))
        tones.push_back(meter.tone({.force = {std::move(heard.samples), sample_rate / factor},
                                    .peak_to_peak = heard.peak_to_peak,
                                    .expected_hz = fundamental(note.string)}));
    return tones;
}

void play_pack(const Note& note, std::span<const Stroke> strokes, const Pack& pack, const Workers& workers, int times,
               std::vector<StrokeResult>& results) {
    std::vector<StrokeRun> runs;
    std::vector<kernel::LaneStroke> lanes;
    for (const std::size_t i : pack) {
        runs.push_back(run_of(note, strokes[i], times));
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
        if (workers.stop.stop_requested()) throw Stopped();
        batch.advance(std::min(batch.steps_left(), steps_between_looks));
    }
    const std::vector<kernel::Record> records = batch.take_records();
    const std::vector<Tone> tones = alike ? tones_of(note, batch, first.sample_rate) : std::vector<Tone>();
    for (std::size_t k = 0; k < pack.size(); ++k) {
        const Stroke& stroke = strokes[pack[k]];
        results[pack[k]] = alike ? result_of(note, stroke, runs[k], HeardRun{records[k], tones[k]})
                                 : result_of(note, stroke, runs[k], records[k]);
    }
}

}  // namespace

std::vector<StrokeResult> play_all(const Note& note, std::span<const Stroke> strokes, const Workers& workers,
                                   int times) {
    std::vector<StrokeResult> results(strokes.size());
    if (!plays_in_lanes(note, workers)) {
        for_each_job(static_cast<int>(strokes.size()), workers, [&](int job) {
            const auto i = static_cast<std::size_t>(job);
            results[i] = play(note, strokes[i], times);
        });
        return results;
    }
    const std::vector<Pack> packs = packs_of(strokes);
    for_each_job(static_cast<int>(packs.size()), workers, [&](int job) {
        play_pack(note, strokes, packs[static_cast<std::size_t>(job)], workers, times, results);
    });
    return results;
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
