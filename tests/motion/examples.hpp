// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/motion_features.hpp"
#include "sim/batch.hpp"
#include "tests/motion/strokes.hpp"

#include <filesystem>
#include <vector>

namespace tests {

/// One recording of one simulated stroke, as the naming of motions sees it.
struct Example {
    int motion = 0;
    int scene = 0;  ///< different scenes share no note, place and speed
    bool clear = false;
    bool known = false;  ///< was the note told?
    double fundamental_share = 0.0;
    analysis::MotionFeatures features{};
};

/// Instruments whose strokes the fit sees, and those it is tested with.
std::vector<std::string> design_presets();
std::vector<std::string> test_presets();
std::vector<sim::Preset> presets_named(const std::vector<std::string>& names);

/// How many, and how they are heard.
struct ExamplePlan {
    std::uint32_t seed = 1;
    int player_scenes = 0;  ///< of each region
    int far_scenes = 0;
    int light_scenes = 0;  ///< of S-motion alone: the others are found everywhere
    std::size_t most = 2;  ///< strokes of a motion in a scene
    int bodies = 3;        ///< through which each stroke is heard; twice as many for S-motion, which is rare
};

/// Examples of the design's presets, each through another body, 33 to 55 dB over the noise, told its note or not, some
/// with vibrato, some in a room.  The same for every count of workers.
std::vector<Example> make_examples(const ExamplePlan& plan, const sim::Workers& workers);

/// One file, in the order of bytes of this machine; throws std::runtime_error.
void write_examples(const std::filesystem::path& place, const std::vector<Example>& examples);
std::vector<Example> read_examples(const std::filesystem::path& place);

}  // namespace tests
