// SPDX-License-Identifier: GPL-3.0-or-later
// How fast the kernels are, and what a person waits for.  Run it on a quiet machine:
//   .build/release/tests/bench/bowband_bench
// Every row prints lane-steps a second (one note advanced by one sample), their ratio to the plain reference in the
// same run and, for one core, the share of what it does at most without fused multiply-add.
#include "analysis/recording.hpp"
#include "sim/climb.hpp"
#include "sim/force_window.hpp"
#include "sim/kernel/lanes.hpp"
#include "sim/note.hpp"
#include "sim/passage/fingering.hpp"
#include "sim/preset.hpp"
#include "sim/stroke_batch.hpp"
#include "sim/stroke_map.hpp"
#include "tests/bench/notes.hpp"
#include "tests/bench/peak.hpp"
#include "tests/bench/recital.hpp"

#include <benchmark/benchmark.h>
#include <hwy/highway.h>
#include <hwy/targets.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <thread>

namespace {

using namespace sim;
using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point begin) { return std::chrono::duration<double>(Clock::now() - begin).count(); }

/// Of this run: what the other rows are set against.
struct Yardstick {
    double reference = 0.0;  // steps a second
};
Yardstick yardstick;

kernel::Drive bench_drive() {
    return {.speed = rising_profile({0.2, 0.06}),
            .force = constant_profile(0.2),
            .contact_point = constant_profile(tests::bench_place),
            .lengthwise = 0.0};
}

std::vector<kernel::LaneStroke> bench_strokes(int steps) {
    std::vector<kernel::LaneStroke> strokes;
    for (std::size_t i = 0; i < kernel::LaneBatch::capacity; ++i)
        strokes.push_back({.speed = rising_profile({0.2, 0.06}),
                           .force = constant_profile(0.1 + 0.02 * static_cast<double>(i)),
                           .start = {},
                           .wanted = {.steps = steps, .bridge_from = steps}});
    return strokes;
}

void count_lane_steps(benchmark::State& state, double done, double seconds) {
    state.counters["lane_steps_per_s"] = done / seconds;
    state.counters["times_reference"] = done / seconds / yardstick.reference;
}

/// The reference, one note; the best of its turns is the yardstick of all that follows.
void reference(benchmark::State& state) {
    const Note note = tests::bench_note();
    const kernel::Note ready = kernel_note(note, sample_rate(note, tests::bench_place));
    constexpr int steps = 40'000;
    double best = 0.0;
    for (auto _ : state) {
        const auto begin = Clock::now();
        benchmark::DoNotOptimize(
            kernel::run_reference(ready, bench_drive(), {}, {.steps = steps, .bridge_from = steps}));
        best = std::max(best, steps / seconds_since(begin));
    }
    yardstick.reference = best;
    state.counters["lane_steps_per_s"] = best;
}
BENCHMARK(reference)->Unit(benchmark::kMillisecond)->MinTime(2.0);

/// From here on the kernel takes this instruction set, or 0: the best there is.
void choose(std::int64_t target) {
    hwy::SetSupportedTargetsForTest(target);
    hwy::GetChosenTarget().Update(hwy::SupportedTargets());
}

/// The vector kernel alone, 16 strokes on one core.
void lanes(benchmark::State& state, std::int64_t target) {
    if (target != 0 && (hwy::SupportedTargets() & target) == 0) return state.SkipWithError("not on this processor");
    choose(target);
    const double peak = tests::peak_operations_per_second();
    const Note note = tests::bench_note();
    const kernel::Note ready = kernel_note(note, sample_rate(note, tests::bench_place));
    constexpr int steps = 40'000;
    const std::vector<kernel::LaneStroke> strokes = bench_strokes(steps);
    double best = 0.0;
    for (auto _ : state) {
        kernel::LaneBatch batch(ready, bench_drive().contact_point, 0.0, strokes);
        const auto begin = Clock::now();
        batch.advance(steps);
        best = std::max(best, kernel::LaneBatch::capacity * steps / seconds_since(begin));
        benchmark::DoNotOptimize(batch.take_records());
    }
    count_lane_steps(state, best, 1.0);
    state.counters["share_of_peak"] = best * tests::operations_per_step(note) / peak;
    choose(0);
}
BENCHMARK_CAPTURE(lanes, best_set, std::int64_t{0})->Unit(benchmark::kMillisecond)->MinTime(2.0);
BENCHMARK_CAPTURE(lanes, avx2, std::int64_t{HWY_AVX2})->Unit(benchmark::kMillisecond)->MinTime(2.0);
BENCHMARK_CAPTURE(lanes, sse4, std::int64_t{HWY_SSE4})->Unit(benchmark::kMillisecond)->MinTime(2.0);

double steps_of(const StrokeMap& map) {
    double sum = 0.0;
    for (const StrokeResult& result : map.strokes) sum += result.sample_rate * result.stroke.duration;
    return sum;
}

/// What a player waits for after a drag: one note's map of 40 contact points and 48 forces.
void started_map_40x48(benchmark::State& state) {
    const Preset preset = find_preset("division_bass_viol");
    const Note note = make_note(preset, preset.strings.front(), 12.0);
    const MapGrid grid{.contact_points = 40, .player_forces = 48};
    double steps = 0.0;
    const auto begin = Clock::now();
    for (auto _ : state)
        steps += steps_of(started_map(note, preset.player, grid, {.threads = static_cast<int>(state.range(0))}));
    count_lane_steps(state, steps, seconds_since(begin));
}
BENCHMARK(started_map_40x48)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();

ClimbPlan bench_climb() {
    ClimbPlan plan{.stops = {}, .grid = {.contact_points = 24, .player_forces = 24}, .end = {}};
    for (int stop = 0; stop < 23; ++stop) plan.stops.push_back(stop);
    return plan;
}

/// A teacher's climb of one string: 23 stops, maps of 24 by 24.
void climb_of_a_string(benchmark::State& state) {
    const Preset preset = find_preset("division_bass_viol");
    for (auto _ : state)
        benchmark::DoNotOptimize(
            find_climb(preset, preset.strings.front(), preset.player, bench_climb(), {.threads = 2}));
}
BENCHMARK(climb_of_a_string)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(1);

/// A maker's survey: the same on all strings.
void instrument(benchmark::State& state) {
    const Preset preset = find_preset("division_bass_viol");
    for (auto _ : state)
        for (const PresetString& string : preset.strings)
            benchmark::DoNotOptimize(find_climb(preset, string, preset.player, bench_climb(), {.threads = 2}));
}
BENCHMARK(instrument)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(1);

/// Forces that hold one note, edges to 2 %, at 16 contact points.
void held_edges_16(benchmark::State& state) {
    const Preset preset = find_preset("division_bass_viol");
    const Note note = make_note(preset, preset.strings.front(), 12.0);
    const std::vector<double> places = even_in_ratio({note.floor, 0.3 * note.string.length}, 16);
    for (auto _ : state)
        for_each_job(16, {.threads = 2}, [&](int i) {
            const double place = places[static_cast<std::size_t>(i)];
            benchmark::DoNotOptimize(held_window(note, preset.player, place, usual_scan(note, preset.player, place)));
        });
}
BENCHMARK(held_edges_16)->Unit(benchmark::kMillisecond)->UseRealTime();

/// Sixteen strokes under the hand: blocks of 5 ms, driven anew before each, their records taken after it; 60 s of
/// sound.
void live_blocks(benchmark::State& state) {
    constexpr double block = 0.005;   // s
    constexpr double lasting = 60.0;  // s
    const Note note = tests::bench_note();
    const double rate = sample_rate(note, tests::bench_place);
    const int steps = static_cast<int>(block * rate);
    const int blocks = static_cast<int>(lasting / block);
    double worst = 0.0;
    double sum = 0.0;
    for (auto _ : state) {
        std::vector<kernel::LaneStroke> strokes = bench_strokes(steps * blocks);
        kernel::LaneBatch batch(kernel_note(note, rate), bench_drive().contact_point, 0.0, strokes);
        for (int i = 0; i < blocks; ++i) {
            const auto begin = Clock::now();
            const double force = 0.2 + 0.1 * (i % 40) / 40.0;
            for (std::size_t lane = 0; lane < kernel::LaneBatch::capacity; ++lane)
                batch.drive(lane, constant_profile(0.2), constant_profile(force));
            batch.advance(steps);
            benchmark::DoNotOptimize(batch.take_records());
            const double took = seconds_since(begin);
            worst = std::max(worst, took);
            sum += took;
        }
    }
    state.counters["worst_block_ms"] = 1e3 * worst;
    state.counters["share_of_core"] = sum / (static_cast<double>(state.iterations()) * lasting);
}
BENCHMARK(live_blocks)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(1);

/// 500 notes up and down two octaves and more, with some leaps, fingered in three ways on one core.
void fingering_500(benchmark::State& state) {
    const Preset preset = find_preset("division_bass_viol");
    score::Tune tune{.title = {}, .notes = {}, .tempos = {{0.0, 90.0}}, .metres = {{}}};
    constexpr int notes = 500;
    constexpr double length = 0.5;  // quarter notes
    constexpr std::array<char, 7> steps{'C', 'D', 'E', 'F', 'G', 'A', 'B'};
    for (int i = 0; i < notes; ++i) {
        const int turned = i % 46;
        const int step =
            20 + (turned < 23 ? turned : 45 - turned) - (i % 5 == 4 ? 3 : 0);  // steps above C0, from B2 to C6
        score::TuneNote note{.spelling = {.step = steps[static_cast<std::size_t>(step % 7)], .octave = step / 7},
                             .start = length * i,
                             .duration = length,
                             .bar = 1 + i / 8};
        note.stress = score::stress_at(tune.metres.front(), length * (i % 8));
        tune.notes.push_back(note);
    }
    for (auto _ : state) benchmark::DoNotOptimize(passage::find_fingerings(tune, preset));
    state.counters["notes_per_s"] = benchmark::Counter(notes, benchmark::Counter::kIsIterationInvariantRate);
}
BENCHMARK(fingering_500)->Unit(benchmark::kMillisecond);

/// A researcher's recording: ten minutes of stereo sound at 48 kHz.  `cpu_s` is what all threads took together.
void analyse_ten_minutes(benchmark::State& state) {
    const auto file = std::filesystem::temp_directory_path() / "bowband_recital.wav";
    tests::write_recital(file);
    const std::clock_t begin = std::clock();
    std::size_t notes = 0;
    for (auto _ : state)
        notes = analysis::analyse_file(file, {.threads = static_cast<int>(state.range(0))}).notes.size();
    state.counters["cpu_s"] = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    state.counters["notes"] = static_cast<double>(notes);
    std::filesystem::remove(file);
}
BENCHMARK(analyse_ten_minutes)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(1);

}  // namespace

int main(int count, char** arguments) {
    benchmark::Initialize(&count, arguments);
    if (benchmark::ReportUnrecognizedArguments(count, arguments)) return 2;
    std::printf("kernel for %s; peak of a core without fused multiply-add %.0f GFLOP/s; %.0f operations a lane-step\n",
                tests::instruction_set().c_str(), 1e-9 * tests::peak_operations_per_second(),
                tests::operations_per_step(tests::bench_note()));
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
