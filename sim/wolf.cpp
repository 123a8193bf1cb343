// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/wolf.hpp"

#include "sim/climb.hpp"
#include "sim/sound/render.hpp"

#include <algorithm>
#include <span>

namespace sim {

namespace {

constexpr double beginning = 0.5;  // s, not listened to

}  // namespace

Beating beating_of(const Played& played, const Note& note) {
    Beating beating{.listened = played.result.stroke.duration >= wolf_least_time};
    if (!beating.listened || played.record.diverged) return beating;
    const analysis::Signal sound =
        sound::render({played.record.bridge_force, played.result.sample_rate}, sound::radiating_modes(note.bridge));
    std::span<const double> heard(sound.samples);
    heard = heard.subspan(std::min(heard.size(), static_cast<std::size_t>(beginning * sound.sample_rate)));
    beating.warble = analysis::measure_warble(heard, sound.sample_rate);
    if (beating.warble) beating.body_mode = body_mode_near(note.bridge, fundamental(note.string), wolf_within_cents);
    return beating;
}

bool is_wolf(const Beating& beating) { return beating.warble && beating.body_mode; }

}  // namespace sim
