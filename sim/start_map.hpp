// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/player.hpp"
#include "sim/start_run.hpp"
#include "sim/stroke_map.hpp"

#include <vector>

namespace sim {

/// One force and one pace.  Where a neighbour's run ended otherwise, slightly varied runs were played too, and all
/// vote.
struct StartCell {
    StartPoint point;
    StartRun run;          ///< of exactly this force and pace
    int runs = 1;          ///< that voted
    int strict_votes = 0;  ///< runs that began cleanly …
    int lenient_votes = 0;

    /// Share of the runs that began cleanly.
    double share(StartLimit limit) const {
        return static_cast<double>(limit == StartLimit::strict ? strict_votes : lenient_votes) / runs;
    }
    bool clean(StartLimit limit) const { return share(limit) > 0.5; }
    bool unsure(StartLimit limit) const { return share(limit) > 0.0 && share(limit) < 1.0; }
    bool operator==(const StartCell&) const = default;
};

/// Which beginnings are played: every force with every pace.
struct StartPlan {
    StartCase start;
    Range forces{};           ///< N
    int force_count = 24;     ///< even in ratio, >= 2
    Range paces{};            ///< m/s^2 or s, see StartPoint
    int pace_count = 24;      ///< even in ratio, >= 2
    double variation = 0.01;  ///< of the four varied runs: force, then pace, a share less and more
};
/// Forces from a quarter of the lightest stroke to four times the firmest; accelerations from a 32nd of the player's
/// own (speed / rise) to four times it, as clean beginnings lie mostly under it; times of the force's rise from a tenth
/// of the player's rise to four times it. A rise under 10 ms counts as 10 ms.  The lenient limit is the player's time
/// to speak.
StartPlan usual_start_plan(StartKind kind, const Player& player, double contact_point);

/// A note's beginnings over force and pace.
struct StartMap {
    Note note;
    StartPlan plan;
    std::vector<double> forces;    ///< N, rising
    std::vector<double> paces;     ///< rising
    std::vector<StartCell> cells;  ///< [pace][force], force fastest

    const StartCell& at(std::size_t pace, std::size_t force) const { return cells[pace * forces.size() + force]; }
};

/// Plays the whole map, then the varied runs where neighbours differ.
StartMap start_map(const Note& note, const StartPlan& plan, const Workers& workers);

}  // namespace sim
