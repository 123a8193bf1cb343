// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/sound/takes.hpp"

#include "sim/sound/render.hpp"

#include <array>
#include <cmath>

namespace sim::sound {
namespace {

using analysis::Signal;

Signal silence(double seconds) {
    return {std::vector<double>(static_cast<std::size_t>(std::llround(seconds * sound_rate)), 0.0), sound_rate};
}

Signal take_at(const Note& note, const std::optional<StrokeResult>& shown, double seconds) {
    if (!shown) return silence(seconds);
    Stroke stroke = shown->stroke;
    stroke.duration = seconds;
    return take_of(play_recorded(note, stroke), note.bridge);
}

}  // namespace

Signal take_of(const Played& played, const Bridge& bridge) {
    if (played.record.diverged) return silence(played.result.stroke.duration);
    Signal take = render({played.record.bridge_force, played.result.sample_rate}, radiating_modes(bridge));
    fade_ends(take);
    return take;
}

StopTakes stop_takes(const Climb& climb, double seconds, const Workers& workers) {
    const std::size_t count = climb.stops.size();
    StopTakes takes{std::vector<Signal>(count), std::vector<Signal>(count)};
    for_each_job(2 * static_cast<int>(count), workers, [&](int job) {
        const std::size_t i = static_cast<std::size_t>(job) / 2;
        const ClimbStop& stop = climb.stops[i];
        if (job % 2 == 0)
            takes.left_behind[i] = take_at(stop.note, stop.left_behind.stroke, seconds);
        else
            takes.follows[i] = take_at(stop.note, stop.follows ? stop.follows->stroke : std::nullopt, seconds);
    });
    return takes;
}

ClimbTakes climb_takes(const Climb& climb, const ClimbTimes& times, const Workers& workers) {
    const StopTakes stops = stop_takes(climb, times.stop, workers);
    std::array<Signal, 2> takes{concatenate(stops.left_behind, times.gap), concatenate(stops.follows, times.gap)};
    share_gain(takes);
    return {std::move(takes[0]), std::move(takes[1])};
}

}  // namespace sim::sound
