// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/force_window.hpp"
#include "sim/security.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sim {

/// What becomes of the player's range of force as the bow speed changes.
enum class ForceRule {
    same_forces,        ///< the preset's range at every speed
    forces_with_speed,  ///< force / speed stays: the range scaled with the speed
    dynamics            ///< as forces_with_speed, by the factors of the dynamics
};
/// As in JSON: "same_forces".
std::string_view force_rule_name(ForceRule rule);

/// Soft to loud: force and speed of the player's stroke both times a factor (common practice, no source).
struct Dynamic {
    std::string_view name;
    double factor;
};
inline constexpr std::array<Dynamic, 6> dynamics{
    {{"pp", 0.5}, {"p", 0.7}, {"mp", 1.0}, {"mf", 1.4}, {"f", 2.0}, {"ff", 2.8}}};

/// Which notes and speeds to try, and how finely: a map takes some 190 strokes, one speed of one note 1 to 3 s of a
/// core.
struct SpeedPlan {
    std::vector<double> stops;   ///< semitones, rising, at least one
    std::vector<double> speeds;  ///< m/s, rising, at least two
    MapGrid grid{.contact_points = 24, .player_forces = 8, .more_forces = 0};
    std::optional<StopEnd> end;  ///< instead of the usual one, for every stop
};

/// The player's own speed, a quarter of it, and it times the dynamics' factors.
std::vector<double> usual_speeds(const Player& player);

/// One note played at one speed.
struct SpeedRow {
    Note note;
    ForceRule rule = ForceRule::same_forces;
    std::string dynamic;  ///< its name under ForceRule::dynamics, else empty
    Player player;        ///< speed and forces in force
    BandResult band;
    std::optional<ForceWindow> speaking;  ///< forces that speak at the best contact point; none where nothing speaks
    std::optional<StrokeResult> middle;   ///< a stroke of the range's middle force there

    /// Some stroke of the range speaks and keeps its tone somewhere; else "best" only names where most speak.
    bool is_secure() const { return band.band || (band.stretch && band.at_best.security > 0.0); }
    /// The band, or where there is none the most secure stretch.
    const std::optional<Band>& place() const { return band.band ? band.band : band.stretch; }
};

struct SpeedStudy {
    Player player;               ///< as asked, before its speed and forces were changed
    std::vector<SpeedRow> rows;  ///< stop by stop, rule by rule, speeds rising
};

/// Maps that two rules share are played once.
SpeedStudy find_speeds(const Preset& preset, const PresetString& string, const Player& player, const SpeedPlan& plan,
                       const Workers& workers);

/// What is read from the rows of one stop; places in SpeedStudy::rows.
struct SpeedAnswer {
    std::size_t wants = 0;  ///< greatest security, then the widest place in ratio, then nearest the player's own speed
    std::size_t slow = 0;   ///< of the same forces, the speed nearest (in ratio) to a long slow stroke's 0.1 m/s …
    std::size_t quick = 0;  ///< … and to a quick one's 0.4 m/s (common practice, no source)
    std::size_t first = 0;  ///< of the forces that go with the speed, the slowest with any secure stroke …
    std::size_t last = 0;   ///< … and the quickest; the slowest of all where none is
};
/// One for each stop, in order.
std::vector<SpeedAnswer> speed_answers(const SpeedStudy& study);

/// A few plain sentences for each stop: the force and speed it wants, what a slow stroke costs, how far the place
/// moves.
std::string speeds_in_words(const SpeedStudy& study);

}  // namespace sim
