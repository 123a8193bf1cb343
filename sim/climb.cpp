// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/climb.hpp"

#include "analysis/units.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace sim {

namespace {

constexpr double maps_share = 0.9;  // of a climb's work, for the progress bar

ClimbStop stop_of(const StrokeMap& map, const Assessment& assessment, const Player& player) {
    const Note& note = map.note;
    const double length = note.string.length;
    ClimbStop stop{
        .note = note, .band = find_band(assessment, map, player), .speaking = {}, .left_behind = {}, .follows = {}};
    stop.from_nut = note.open_length - length;
    stop.next_semitone = length * (1.0 - analysis::ratio_from_semitones(-1.0));
    // d(1200 log2 f)/dx for f ~ 1/length
    stop.cents_per_mm = analysis::metres_from_mm(1.0) * 1200.0 / (std::log(2.0) * length);
    return stop;
}

ClimbPlace place_at(const StrokeMap& map, const Assessment& assessment, double contact_point) {
    ClimbPlace place{
        .contact_point = contact_point, .security = assessment.at(contact_point), .stroke = {}, .spread = {}};
    if (can_stand(map.note, contact_point)) place.spread = tone_spread(map, contact_point);
    return place;
}

/// Three small jobs a stop: the bow left behind, the bow that follows, and the forces that speak at the best place.
void play_shown_strokes(Climb& climb, const Workers& workers) {
    const double force = middle_force(climb.player);
    for_each_job(3 * static_cast<int>(climb.stops.size()), workers, [&](int job) {
        ClimbStop& stop = climb.stops[static_cast<std::size_t>(job / 3)];
        const Note& note = stop.note;
        if (job % 3 == 0) {
            ClimbPlace& behind = stop.left_behind;
            if (can_stand(note, behind.contact_point))
                behind.stroke = play(note, started_stroke(note, climb.player, {behind.contact_point, force}));
        } else if (stop.follows) {
            const double best = stop.follows->contact_point;
            if (job % 3 == 1)
                stop.follows->stroke = play(note, started_stroke(note, climb.player, {best, force}));
            else
                stop.speaking = started_window(note, climb.player, best, usual_scan(note, climb.player, best, workers));
        }
    });
}

}  // namespace

std::vector<StrokeMap> climb_maps(const Preset& preset, const PresetString& string, const Player& player,
                                  const ClimbPlan& plan, const Workers& workers) {
    std::vector<StrokeMap> maps;
    const double count = static_cast<double>(plan.stops.size());
    for (std::size_t i = 0; i < plan.stops.size(); ++i) {
        Note note = make_note(preset, string, plan.stops[i], plan.end);
        note.force_high = player.force_high;
        const double done = static_cast<double>(i);
        maps.push_back(started_map(note, player, plan.grid, part_of(workers, {done / count, (done + 1.0) / count})));
    }
    return maps;
}

Climb climb_places(const std::vector<StrokeMap>& maps, const Player& player) {
    assert(!maps.empty());
    Climb climb{.player = player, .stops = {}};
    std::optional<double> behind;
    for (const StrokeMap& map : maps) {
        const Assessment assessment(map, player);
        ClimbStop stop = stop_of(map, assessment, player);
        if (!behind) behind = stop.band.best;
        stop.left_behind = place_at(map, assessment, behind.value_or(map.contact_points.front()));
        if (stop.band.best) stop.follows = place_at(map, assessment, *stop.band.best);
        climb.stops.push_back(std::move(stop));
    }
    return climb;
}

Climb find_climb(const Preset& preset, const PresetString& string, const Player& player, const ClimbPlan& plan,
                 const Workers& workers) {
    const std::vector<StrokeMap> maps = climb_maps(preset, string, player, plan, part_of(workers, {0.0, maps_share}));
    Climb climb = climb_places(maps, player);
    play_shown_strokes(climb, part_of(workers, {maps_share, 1.0}));
    return climb;
}

std::string climb_in_words(const Climb& climb) {
    const ClimbStop& first = climb.stops.front();
    const ClimbStop& last = climb.stops.back();
    const auto semitones = [](const ClimbStop& stop) { return short_number(stop.note.stop); };
    if (!first.band.best || !last.band.best)
        return "At stop " + semitones(first.band.best ? last : first) +
               " no stroke of this range speaks anywhere on the string, so there is no path for the bow to follow.";
    std::string words = "From stop " + semitones(first) + " to stop " + semitones(last) + " the bow must move from " +
                        mm_words(*first.band.best) + " to " + mm_words(*last.band.best) + " from the bridge. ";
    const auto fails = std::ranges::find_if(climb.stops, [](const ClimbStop& stop) {
        return stop.left_behind.security.security < 0.5 && stop.band.at_best.security >= 0.5;
    });
    const std::string place = mm_words(first.left_behind.contact_point);
    if (fails == climb.stops.end())
        return words + "A bow left behind at " + place +
               " does no worse than one that follows by the measure used here.";
    return words + "Left behind at " + place + ", it fails from stop " + semitones(*fails) +
           " on more than half of its strokes: " + std::string(fault_name(fails->left_behind.security.fails_by)) + ".";
}

std::optional<double> body_mode_near(const Bridge& bridge, double hz, double cents) {
    for (const BridgeMode& mode : bridge.modes)
        if (std::abs(analysis::cents_between(mode.frequency, hz)) <= cents) return mode.frequency;
    return std::nullopt;
}

}  // namespace sim
