// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/force_window.hpp"
#include "sim/rule.hpp"
#include "sim/security.hpp"
#include "sim/sensitivity_list.hpp"

#include <optional>
#include <vector>

namespace sim {

/// Which notes, how finely, and which constants.
struct SensitivityPlan {
    std::vector<double> stops;  ///< semitones, rising, at least one
    MapGrid grid{.contact_points = 24, .player_forces = 8, .more_forces = 0};
    double factor = 1.5;         ///< > 1; every constant is multiplied and divided by it
    std::optional<StopEnd> end;  ///< instead of the usual one, for every stop
    std::vector<const Constant*> constants = constants_named("all", "constants");
};

/// Stops from low to high at which the weight of constants is usually looked at: 0, 5, 7, 10, 12, 15, 17, 19, and both
/// ends.
std::vector<double> usual_sensitivity_stops(double low, double high);
/// Those of the stops whose force windows are found and which tables show: 0, 7, 12, 19; all, where none of these is
/// among them.
std::vector<bool> shown_stops(const std::vector<double>& stops);

/// The least and greatest force at which a stroke from rest speaks, N; none where nothing plays or where the scan ended
/// before the edge.
struct ForceEdges {
    std::optional<double> low;
    std::optional<double> high;

    bool operator==(const ForceEdges&) const = default;
};

/// One note under one change.
struct SensitivityNote {
    double stop = 0.0;             ///< semitones
    double sounding_length = 0.0;  ///< m
    BandResult band;
    ForceEdges forces;  ///< of shown notes, at the contact point that is best without any change
};

enum class RowKind { nominal, grid, constant };
enum class Direction { none, up, down };

/// All notes under one change.
struct SensitivityRow {
    RowKind kind = RowKind::nominal;
    Direction direction = Direction::none;
    const Constant* constant = nullptr;  ///< for RowKind::constant
    std::vector<SensitivityNote> notes;  ///< as the plan's stops
    RuleAnswer rule;
};

/// How far a constant moves things on average over the shown notes: |ln(changed / nominal)|, the greater of the two
/// directions at each note.  None where there was nothing to compare.
struct Strength {
    const Constant* constant = nullptr;  ///< none: the grid
    std::optional<double> best;          ///< of the best contact point
    std::optional<double> force_min;
    std::optional<double> force_max;
};

struct Sensitivity {
    SensitivityPlan plan;
    Subject subject;
    std::vector<bool> shown;                    ///< as the plan's stops
    std::vector<SensitivityRow> rows;           ///< nominal, grid up (finer) and down, then each constant up and down
    std::vector<Strength> strengths;            ///< of the constants, by their weight on the best place, then the grid
    std::vector<const Constant*> not_in_force;  ///< that change nothing here because that part of the physics is off
};

/// Plays every note under every change.
///
/// A change of what is only judged (wander, tolerances) replays nothing.  Forces are bracketed to 2 % from a scan whose
/// neighbours differ by half.  The two grid rows change no constant: they play more, or fewer, contact points and
/// forces by the same factor, and find the forces 2 % farther from, or nearer to, the bridge.  What they move is noise.
Sensitivity find_sensitivity(const Preset& preset, const PresetString& string, const SensitivityPlan& plan,
                             const Workers& workers);

/// changed / nominal - 1, where both are there.
std::optional<double> shift(const std::optional<double>& changed, const std::optional<double>& nominal);

/// By how much the grid rows look for forces beside the best place.
inline constexpr double grid_row_place = 1.02;

/// Plain sentences: the strongest three for the best place, what the grid alone does, and what becomes of the rule.
std::string sensitivity_in_words(const Sensitivity& sensitivity);

}  // namespace sim
