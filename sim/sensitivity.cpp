// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/sensitivity.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace sim {

namespace {

constexpr std::array<double, 8> usual_stops{0.0, 5.0, 7.0, 10.0, 12.0, 15.0, 17.0, 19.0};
constexpr std::array<double, 4> table_stops{0.0, 7.0, 12.0, 19.0};
constexpr double scan_share = 0.5;  // of a usual scan's forces: neighbours differ by half

/// One row's world.
struct Variant {
    RowKind kind = RowKind::nominal;
    Direction direction = Direction::none;
    const Constant* constant = nullptr;
    Subject subject;
    MapGrid grid;
    double scan_share = sim::scan_share;
    double force_place = 1.0;  // of the place where forces are found
};

/// What a note is without any change.
struct Nominal {
    StrokeMap map;
    SensitivityNote note;
};

MapGrid scaled(const MapGrid& grid, double factor) {
    const auto times = [&](int count) { return std::max(2, static_cast<int>(std::lround(count * factor))); };
    return {.contact_points = times(grid.contact_points),
            .player_forces = times(grid.player_forces),
            .more_forces = grid.more_forces};
}

std::vector<Variant> variants_of(const Subject& subject, const SensitivityPlan& plan,
                                 std::vector<const Constant*>& not_in_force) {
    std::vector<Variant> variants;
    for (const Direction direction : {Direction::up, Direction::down}) {
        const bool up = direction == Direction::up;
        const double factor = up ? plan.factor : 1.0 / plan.factor;
        variants.push_back({.kind = RowKind::grid,
                            .direction = direction,
                            .constant = nullptr,
                            .subject = subject,
                            .grid = scaled(plan.grid, factor),
                            .scan_share = scan_share * factor,
                            .force_place = up ? grid_row_place : 1.0 / grid_row_place});
    }
    for (const Constant* constant : plan.constants) {
        if (!constant->nominal(subject)) {
            not_in_force.push_back(constant);
            continue;
        }
        for (const Direction direction : {Direction::up, Direction::down}) {
            Variant variant{.kind = RowKind::constant,
                            .direction = direction,
                            .constant = constant,
                            .subject = subject,
                            .grid = plan.grid};
            constant->scale(variant.subject, direction == Direction::up ? plan.factor : 1.0 / plan.factor);
            variants.push_back(variant);
        }
    }
    return variants;
}

/// Only what is judged afterwards differs, so that the strokes are the same.
bool same_strokes(const StrokeMap& map, const Note& note, const Player& player) {
    const Player& played = map.player;
    return map.note == note && played.force_low == player.force_low && played.force_high == player.force_high &&
           played.speed == player.speed && played.rise == player.rise && played.speak_time == player.speak_time &&
           played.speak_periods == player.speak_periods;
}

/// At a contact point of a note: the share of a usual scan's forces that is looked at.
struct EdgeScan {
    double contact_point;  // m
    double share;
};

ForceEdges edges_at(const Note& note, const Player& player, const EdgeScan& asked, const Workers& workers) {
    const auto [contact_point, share] = asked;
    ForceScan scan = usual_scan(note, player, contact_point, workers);
    scan.steps = std::max(4, static_cast<int>(std::ceil((scan.steps - 1) * share)) + 1);
    const ForceWindow window = started_window(note, player, contact_point, scan);
    if (!window.main) return {};
    const ForceInterval& interval = window.intervals[*window.main];
    ForceEdges edges;
    if (interval.below) edges.low = interval.low;
    if (interval.above) edges.high = interval.high;
    return edges;
}

SensitivityNote judged(const StrokeMap& map, const Player& player) {
    const Assessment assessment(map, player);
    return {.stop = map.note.stop,
            .sounding_length = map.note.string.length,
            .band = find_band(assessment, map, player),
            .forces = {}};
}

SensitivityNote changed_note(const Variant& variant, const Nominal& nominal, const SensitivityPlan& plan, bool shown,
                             const Workers& workers) {
    const Player& player = variant.subject.preset.player;
    const Note note = make_note(variant.subject.preset, variant.subject.open, nominal.note.stop, plan.end);
    const bool same = variant.kind == RowKind::constant && same_strokes(nominal.map, note, player);
    SensitivityNote result =
        same ? judged(nominal.map, player) : judged(started_map(note, player, variant.grid, alone(workers)), player);
    if (!shown || !nominal.note.band.best) return result;
    const double place = std::clamp(*nominal.note.band.best * variant.force_place, note.floor, farthest_contact(note));
    result.forces = same ? nominal.note.forces : edges_at(note, player, {place, variant.scan_share}, workers);
    return result;
}

std::vector<Nominal> nominal_notes(const Subject& subject, const SensitivityPlan& plan, const std::vector<bool>& shown,
                                   const Workers& workers) {
    std::vector<Nominal> notes(plan.stops.size());
    const Player& player = subject.preset.player;
    for_each_job(static_cast<int>(notes.size()), workers, [&](int job) {
        const auto i = static_cast<std::size_t>(job);
        const Note note = make_note(subject.preset, subject.open, plan.stops[i], plan.end);
        notes[i].map = started_map(note, player, plan.grid, alone(workers));
        notes[i].note = judged(notes[i].map, player);
        if (const auto& best = notes[i].note.band.best; best && shown[i])
            notes[i].note.forces = edges_at(note, player, {*best, scan_share}, workers);
    });
    return notes;
}

RuleAnswer rule_of(const SensitivityRow& row) {
    std::vector<RulePlace> places;
    for (const SensitivityNote& note : row.notes)
        if (note.band.best) places.push_back({note.stop, note.sounding_length, *note.band.best});
    return judge_rule(places);
}

/// |ln(changed/nominal)|, the greater of both directions, averaged over the shown notes that have it in either.
template <class ValueOf>
std::optional<double> weight(const Sensitivity& all, const SensitivityRow* const (&both)[2], const ValueOf& value_of) {
    double sum = 0.0;
    int count = 0;
    for (std::size_t i = 0; i < all.shown.size(); ++i) {
        const std::optional<double> nominal = value_of(all.rows.front().notes[i]);
        if (!all.shown[i] || !nominal) continue;
        std::optional<double> greatest;
        for (const SensitivityRow* row : both)
            if (const std::optional<double> value = value_of(row->notes[i]))
                greatest = std::max(greatest.value_or(0.0), std::abs(std::log(*value / *nominal)));
        if (!greatest) continue;
        sum += *greatest;
        ++count;
    }
    return count > 0 ? std::optional(sum / count) : std::nullopt;
}

std::vector<Strength> strengths_of(const Sensitivity& all) {
    std::vector<Strength> strengths;
    for (std::size_t i = 1; i + 1 < all.rows.size(); i += 2) {
        const SensitivityRow* const both[2] = {&all.rows[i], &all.rows[i + 1]};
        strengths.push_back({.constant = all.rows[i].constant,
                             .best = weight(all, both, [](const SensitivityNote& n) { return n.band.best; }),
                             .force_min = weight(all, both, [](const SensitivityNote& n) { return n.forces.low; }),
                             .force_max = weight(all, both, [](const SensitivityNote& n) { return n.forces.high; })});
    }
    // the grid's, which came first, goes last
    std::ranges::rotate(strengths, strengths.begin() + 1);
    std::stable_sort(strengths.begin(), strengths.end() - 1, [](const Strength& a, const Strength& b) {
        return a.best.value_or(-1.0) > b.best.value_or(-1.0);
    });
    return strengths;
}

}  // namespace

std::vector<double> usual_sensitivity_stops(double low, double high) {
    std::vector<double> stops{low};
    for (const double stop : usual_stops)
        if (stop > low && stop < high) stops.push_back(stop);
    if (high > low) stops.push_back(high);
    return stops;
}

std::vector<bool> shown_stops(const std::vector<double>& stops) {
    std::vector<bool> shown;
    for (const double stop : stops) shown.push_back(std::ranges::find(table_stops, stop) != table_stops.end());
    if (std::ranges::find(shown, true) == shown.end()) shown.assign(stops.size(), true);
    return shown;
}

std::optional<double> shift(const std::optional<double>& changed, const std::optional<double>& nominal) {
    if (!changed || !nominal) return std::nullopt;
    return *changed / *nominal - 1.0;
}

Sensitivity find_sensitivity(const Preset& preset, const PresetString& string, const SensitivityPlan& plan,
                             const Workers& workers) {
    assert(!plan.stops.empty() && plan.factor > 1.0);
    Sensitivity all{.plan = plan,
                    .subject = {preset, open_string(preset, string)},
                    .shown = shown_stops(plan.stops),
                    .rows = {},
                    .strengths = {},
                    .not_in_force = {}};
    const std::vector<Variant> variants = variants_of(all.subject, plan, all.not_in_force);
    const double first_share = 1.0 / static_cast<double>(variants.size() + 1);
    const std::vector<Nominal> nominal =
        nominal_notes(all.subject, plan, all.shown, part_of(workers, {0.0, first_share}));

    all.rows.emplace_back();
    for (const Nominal& note : nominal) all.rows.front().notes.push_back(note.note);
    for (const Variant& variant : variants)
        all.rows.push_back({.kind = variant.kind,
                            .direction = variant.direction,
                            .constant = variant.constant,
                            .notes = std::vector<SensitivityNote>(nominal.size()),
                            .rule = {}});
    for_each_job(static_cast<int>(variants.size() * nominal.size()), part_of(workers, {first_share, 1.0}),
                 [&](int job) {
                     const std::size_t row = static_cast<std::size_t>(job) / nominal.size();
                     const std::size_t i = static_cast<std::size_t>(job) % nominal.size();
                     all.rows[row + 1].notes[i] = changed_note(variants[row], nominal[i], plan, all.shown[i], workers);
                 });
    for (SensitivityRow& row : all.rows) row.rule = rule_of(row);
    all.strengths = strengths_of(all);
    return all;
}

}  // namespace sim
