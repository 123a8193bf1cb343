// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/ends.hpp"

#include "sim/security.hpp"

#include <algorithm>
#include <cmath>

namespace sim {
namespace {

constexpr double map_share = 0.15;    // of the work, for the progress bar
constexpr int ringing = 20;           // partials
constexpr double to_either_side = 2;  // times the contact point, where forces that hold are sought

Note ended_note(const Preset& preset, const PresetString& string, double stop, const StringEnd& end) {
    Preset with_finger = preset;
    if (end.finger_q > 0.0) with_finger.finger_q = end.finger_q;
    return make_note(with_finger, string, stop, end.end);
}

std::vector<double> places_round(const Note& note, double contact_point, int count) {
    if (count == 1) return {contact_point};
    return even_in_ratio({std::max(note.floor, contact_point / to_either_side),
                          std::min(farthest_contact(note), contact_point * to_either_side)},
                         count);
}

/// As usual, but from lighter strokes on: a hard end holds far under the player's lightest.
ForceScan wide_scan(const Note& note, const Player& player, double contact_point, const Workers& workers) {
    constexpr double lighter = 6.0;  // times
    ForceScan scan = usual_scan(note, player, contact_point, workers);
    const double step = std::log(scan.highest / scan.lowest) / (scan.steps - 1);
    scan.lowest /= lighter;
    scan.steps += static_cast<int>(std::ceil(std::log(lighter) / step));
    return scan;
}

}  // namespace

std::vector<StringEnd> compared_ends(double stop, const std::vector<double>& finger_qs) {
    std::vector<StringEnd> ends;
    if (stop == 0.0) ends.push_back({StopEnd::nut, 0.0});
    ends.push_back({StopEnd::fret, 0.0});
    for (const double q : finger_qs) ends.push_back({StopEnd::finger, q});
    return ends;
}

std::optional<Ends> find_ends(const Preset& preset, const PresetString& string, double stop, const EndsPlan& plan,
                              const Workers& workers) {
    const Player& player = preset.player;
    const Note usual = make_note(preset, string, stop, plan.end);
    const std::optional<double> place =
        plan.contact_point ? plan.contact_point
                           : find_band(usual, player, plan.grid, part_of(workers, {0.0, map_share})).best;
    if (!place) return std::nullopt;
    Ends ends{.contact_point = *place, .usual_q = preset.finger_q, .usual = usual.end, .answers = {}};
    for (const StringEnd& end : compared_ends(stop, plan.finger_qs)) {
        EndAnswer answer{.end = end, .note = ended_note(preset, string, stop, end), .places = {}};
        for (const double contact_point : places_round(usual, *place, plan.held_points))
            answer.places.push_back({contact_point, {}});
        answer.partials = ringing_partials(answer.note, ringing);
        answer.ring_time = ring_time(answer.partials);
        ends.answers.push_back(std::move(answer));
    }
    const int jobs_each = static_cast<int>(ends.answers.front().places.size()) + 1;
    for_each_job(jobs_each * static_cast<int>(ends.answers.size()), part_of(workers, {map_share, 1.0}), [&](int job) {
        EndAnswer& answer = ends.answers[static_cast<std::size_t>(job / jobs_each)];
        const auto i = static_cast<std::size_t>(job % jobs_each);
        if (i == answer.places.size()) {
            answer.stroke = play(answer.note, started_stroke(answer.note, player, {*place, middle_force(player)}));
            return;
        }
        const double contact_point = answer.places[i].contact_point;
        answer.places[i].held =
            held_window(answer.note, player, contact_point, wide_scan(answer.note, player, contact_point, workers));
    });
    return ends;
}

}  // namespace sim
