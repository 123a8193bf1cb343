// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/batch.hpp"

#include "sim/climb.hpp"

#include <gtest/gtest.h>

#include <stdexcept>

namespace {

using namespace sim;

}  // namespace

TEST(BatchTest, EveryJobRunsOnceWhateverTheThreads) {
    for (int threads : {1, 2, 3, 8}) {
        std::vector<int> runs(100, 0);
        for_each_job(100, {.threads = threads, .progress = {}}, [&](int i) { ++runs[static_cast<std::size_t>(i)]; });
        EXPECT_EQ(runs, std::vector<int>(100, 1)) << threads;
    }
}

TEST(BatchTest, ExceptionOfAJobReachesTheCaller) {
    const auto job = [](int i) {
        if (i == 5) throw std::runtime_error("five");
    };
    EXPECT_THROW(for_each_job(10, {.threads = 2, .progress = {}}, job), std::runtime_error);
}

TEST(BatchTest, ProgressEndsAtTheWhole) {
    double last = 0.0;
    for_each_job(7, part_of({.threads = 2, .progress = [&](double share) { last = share; }}, {0.2, 0.6}), [](int) {});
    EXPECT_NEAR(last, 0.6, 1e-12);
}

TEST(BatchTest, MapIsTheSameBitsWithOneTwoAndThreeThreads) {
    const Preset preset = find_preset("treble_viol");
    const Note note = make_note(preset, preset.strings[0], 12.0);
    const MapGrid grid{.contact_points = 4, .player_forces = 3, .more_forces = 0};
    const StrokeMap one = started_map(note, preset.player, grid, {.threads = 1, .progress = {}});
    for (int threads : {2, 3})
        EXPECT_EQ(started_map(note, preset.player, grid, {.threads = threads, .progress = {}}).strokes, one.strokes);
}
