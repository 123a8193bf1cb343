// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/sound/live_ear.hpp"
#include "sim/sound/live_voice.hpp"

#include <cmath>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace tests {

inline constexpr double card_rate = 48000.0;
inline constexpr std::size_t block = 240;

/// A voice with its ear, as the desktop program has them.
class Live {
public:
    sim::Note set_note(const sim::Preset& preset, int string, double stop) {
        auto ready = std::make_unique<sim::sound::LiveNote>(preset, string, stop, card_rate);
        const sim::Note note = ready->note;
        ear.expect({.serial = voice.set_note(std::move(ready)), .note = note});
        return note;
    }

    /// The sound of the next `seconds`; heard every 66 ms or so.
    std::vector<float> play(double seconds) {
        std::vector<float> all;
        std::vector<float> part(block);
        for (int i = 0; i < std::lround(seconds * card_rate / block); ++i) {
            voice.render(part);
            all.insert(all.end(), part.begin(), part.end());
            if (i % 13 == 12) heard = ear.hear(voice);
        }
        heard = ear.hear(voice);
        return all;
    }

    /// The force on the bridge of the next `seconds`, the contact point moved 30 times a second.
    std::vector<double> force_while(double seconds, const std::function<sim::sound::LiveStroke(double)>& hand) {
        std::vector<double> force;
        std::vector<float> part(block);
        for (int i = 0; i < std::lround(seconds * card_rate / block); ++i) {
            const double time = i * block / card_rate;
            voice.set_stroke(hand(std::floor(time * 30.0) / 30.0));
            voice.render(part);
            for (sim::sound::LiveTrace trace; voice.take(trace);) force.push_back(trace.force);
        }
        return force;
    }

    sim::sound::LiveVoice voice{card_rate};
    sim::sound::LiveEar ear{card_rate};
    std::optional<sim::sound::LiveEar::Heard> heard;
};

inline std::vector<double> last(const std::vector<float>& sound, double seconds) {
    return {sound.end() - std::lround(seconds * card_rate), sound.end()};
}

}  // namespace tests
