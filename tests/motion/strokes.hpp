// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"
#include "sim/batch.hpp"
#include "sim/judge.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// Simulated recordings whose motion is known, to design and to test what names motions in sound.
namespace tests {

/// One stroke as a microphone would have it: invented body, noise, silence before and after.
struct RecordedStroke {
    analysis::Signal sound;
    sim::Motion motion = sim::Motion::silent;  ///< the judge's, at three quarters of the stroke and at its end alike
    double string_hz = 0.0;                    ///< of the note that was stopped
    double from = 0.0;                         ///< s, the stroke
    double to = 0.0;                           ///< s
    int scene = 0;                             ///< its number under the plan's seed
    std::string what;                          ///< preset, string, stop, ratio, force, for people
};

/// Which strokes.
struct StrokePlan {
    std::vector<std::string> presets;
    std::uint32_t seed = 1;
    int of_each = 60;         ///< strokes of every motion
    int most_scenes = 20000;  ///< notes and places tried until then at the most, 16 forces each
    std::vector<int> scenes;  ///< the numbers of those to try; empty: 0, 1, 2, …
    double noise_db = 40.0;   ///< white, under the level of a good stroke of the same note
};

/// Strokes at random notes, places, forces and speeds over bodies whose modes are moved by up to a quarter, their Q and
/// radiation redrawn; up to of_each of every motion.  The same for every count of workers.
std::vector<RecordedStroke> recorded_strokes(const StrokePlan& plan, const sim::Workers& workers);

}  // namespace tests
