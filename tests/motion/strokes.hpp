// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"
#include "sim/judge.hpp"
#include "sim/preset.hpp"
#include "sim/sound/render.hpp"
#include "tests/motion/dice.hpp"
#include "tests/motion/room.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// Simulated strokes whose motion is known, to design and to test what names motions in sound.
namespace tests {

/// Where and how firmly the bow is set.
enum class Region {
    player,  ///< contact ratio 0.025 … 0.4, forces from a fiftieth to twelve times the player's middle one
    far,     ///< the same forces, contact ratio 0.12 … 0.4
    light    ///< 0.14 … 0.33, up to 0.8 of the middle force: where S-motion is found
};

using Body = std::vector<sim::sound::RadiatingMode>;

/// What one stroke put on the bridge.
struct BowedStroke {
    analysis::Signal force;  ///< N, from its start
    Body body;               ///< that it was bowed on
    sim::Motion motion = sim::Motion::silent;
    /// The judge says the same at 0.6 and 0.8 of the stroke and at its end, of the same stroke a thousandth faster,
    /// were the first harmonic a tenth stronger or weaker, and were the slips longer or shorter by a factor of 1.4.
    bool clear = false;
    double fundamental_share = 0.0;  ///< of the ideal first harmonic, which parts S-motion from Helmholtz motion
    double string_hz = 0.0;          ///< of the note that was stopped
    double usual_force = 0.0;        ///< N, first harmonic of an ideal stroke of that speed at a usual place
    int scene = 0;
    std::string what;  ///< preset, string, stop, ratio, force, for people
};

/// One note, place and speed of one of the presets, on a body whose modes are moved by up to a quarter, their Q, mass
/// and radiation redrawn; sixteen forces spread over the region's.  `most` strokes of each motion.
struct ScenePlan {
    std::span<const sim::Preset> presets;
    std::uint32_t seed = 1;
    Region region = Region::player;
    std::size_t most = 1;
    std::array<bool, 6> wanted{true, true, true, true, true, true};  ///< motions
    bool ask_clear = true;  ///< else the shorter and faster strokes are not played, and don't count
};
std::vector<BowedStroke> scene_strokes(const ScenePlan& plan, int scene);

/// Another body of the same size: modes moved, Q and radiation redrawn, signs too.
Body redrawn(const Body& body, Dice& dice);

/// What a microphone hears of it: through a body, in a room or none, with white noise so far under a usual stroke.  All
/// of the stroke.
struct Microphone {
    Body body;
    double noise_db = 40.0;
    std::optional<Room> room;
};
struct RecordedStroke {
    analysis::Signal sound;
    double noise = 0.0;  ///< RMS
};
RecordedStroke recorded(const BowedStroke& stroke, const Microphone& microphone, Dice& dice);

}  // namespace tests
