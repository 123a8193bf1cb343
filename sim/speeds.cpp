// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/speeds.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <tuple>

namespace sim {

namespace {

constexpr double map_share = 0.85;      // of one speed's work, for the progress bar
constexpr double slowest_share = 0.25;  // of the player's speed, in the usual speeds
constexpr double slow_stroke = 0.1;     // m/s
constexpr double quick_stroke = 0.4;    // m/s

constexpr std::array<std::string_view, 3> rule_names{"same_forces", "forces_with_speed", "dynamics"};

Player at_speed(Player player, double speed, ForceRule rule) {
    const double factor = speed / player.speed;
    player.speed = speed;
    if (rule == ForceRule::same_forces) return player;
    player.force_low *= factor;
    player.force_high *= factor;
    return player;
}

SpeedRow asked_row(const Note& note, const Player& player, ForceRule rule, std::string dynamic = {}) {
    SpeedRow row{.note = note,
                 .rule = rule,
                 .dynamic = std::move(dynamic),
                 .player = player,
                 .band = {},
                 .speaking = {},
                 .middle = {}};
    row.note.force_high = player.force_high;
    return row;
}

/// All rows of one stop, not yet played.
std::vector<SpeedRow> asked_rows(const Note& note, const Player& player, const SpeedPlan& plan) {
    std::vector<SpeedRow> rows;
    for (const ForceRule rule : {ForceRule::same_forces, ForceRule::forces_with_speed})
        for (const double speed : plan.speeds) rows.push_back(asked_row(note, at_speed(player, speed, rule), rule));
    for (const Dynamic& dynamic : dynamics)
        rows.push_back(asked_row(note, at_speed(player, dynamic.factor * player.speed, ForceRule::dynamics),
                                 ForceRule::dynamics, std::string(dynamic.name)));
    return rows;
}

void play_row(SpeedRow& row, const MapGrid& grid, const Workers& workers) {
    row.band = find_band(row.note, row.player, grid, part_of(workers, {0.0, map_share}));
    if (!row.band.best) return;
    const double best = *row.band.best;
    const Player& player = row.player;
    for_each_job(2, part_of(workers, {map_share, 1.0}), [&](int job) {
        if (job == 0)
            row.speaking = started_window(row.note, player, best, usual_scan(row.note, player, best, workers));
        if (job == 1) row.middle = play(row.note, started_stroke(row.note, player, {best, middle_force(player)}));
    });
}

/// An earlier row of the same note whose strokes are the same.
const SpeedRow* same_strokes(const std::vector<SpeedRow>& rows, std::size_t before) {
    for (std::size_t i = 0; i < before; ++i)
        if (rows[i].player == rows[before].player && rows[i].note == rows[before].note) return &rows[i];
    return nullptr;
}

void take_over(SpeedRow& row, const SpeedRow& played) {
    row.band = played.band;
    row.speaking = played.speaking;
    row.middle = played.middle;
}

double width_ratio(const SpeedRow& row) { return row.place() ? row.place()->far / row.place()->near : 1.0; }

double away(double speed, double from) { return std::abs(std::log(speed / from)); }

}  // namespace

std::string_view force_rule_name(ForceRule rule) { return rule_names[static_cast<std::size_t>(rule)]; }

std::vector<double> usual_speeds(const Player& player) {
    std::vector<double> speeds{slowest_share * player.speed};
    for (const Dynamic& dynamic : dynamics) speeds.push_back(dynamic.factor * player.speed);
    return speeds;
}

SpeedStudy find_speeds(const Preset& preset, const PresetString& string, const Player& player, const SpeedPlan& plan,
                       const Workers& workers) {
    assert(!plan.stops.empty() && plan.speeds.size() > 1);
    SpeedStudy study{.player = player, .rows = {}};
    for (const double stop : plan.stops)
        for (SpeedRow& row : asked_rows(make_note(preset, string, stop, plan.end), player, plan))
            study.rows.push_back(std::move(row));
    const auto count = static_cast<double>(study.rows.size());
    for (std::size_t i = 0; i < study.rows.size(); ++i) {
        if (const SpeedRow* played = same_strokes(study.rows, i)) {
            take_over(study.rows[i], *played);
            continue;
        }
        const double done = static_cast<double>(i);
        play_row(study.rows[i], plan.grid, part_of(workers, {done / count, (done + 1.0) / count}));
    }
    return study;
}

std::vector<SpeedAnswer> speed_answers(const SpeedStudy& study) {
    const std::vector<SpeedRow>& rows = study.rows;
    std::vector<SpeedAnswer> answers;
    const auto merit = [&](const SpeedRow& row) {
        return std::tuple(row.band.at_best.security, width_ratio(row), -away(row.player.speed, study.player.speed));
    };
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const SpeedRow& row = rows[i];
        if (i == 0 || !(row.note.stop == rows[i - 1].note.stop)) answers.push_back({i, i, i, i, i});
        SpeedAnswer& answer = answers.back();
        if (merit(row) > merit(rows[answer.wants])) answer.wants = i;
        if (row.rule == ForceRule::same_forces) {
            const auto nearer = [&](std::size_t so_far, double speed) {
                return away(row.player.speed, speed) < away(rows[so_far].player.speed, speed) ? i : so_far;
            };
            answer.slow = nearer(answer.slow, slow_stroke);
            answer.quick = nearer(answer.quick, quick_stroke);
        }
        if (row.rule != ForceRule::forces_with_speed) continue;
        if (rows[answer.first].rule != row.rule) answer.first = answer.last = i;
        if (!row.is_secure()) continue;
        if (!rows[answer.first].is_secure()) answer.first = i;
        answer.last = i;
    }
    return answers;
}

}  // namespace sim
