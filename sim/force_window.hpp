// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/batch.hpp"
#include "sim/stroke.hpp"

#include <functional>
#include <optional>
#include <span>
#include <stop_token>
#include <vector>

namespace sim {

/// Forces that play, from one edge to the other, and what the string does beyond them.
struct ForceInterval {
    double low = 0.0;             ///< N
    double high = 0.0;            ///< N
    std::optional<Motion> below;  ///< just under `low`; nothing where the scan ended there
    std::optional<Motion> above;  ///< just over `high`; nothing where the scan ended there

    bool operator==(const ForceInterval&) const = default;
};

/// All forces that play at one contact point.
struct ForceWindow {
    std::vector<ForceInterval> intervals;  ///< rising
    std::optional<std::size_t> main;  ///< which holds the middle force, else the widest (in ratio); nothing plays: none

    bool operator==(const ForceWindow&) const = default;
};

/// Where to look, and how finely.
struct ForceScan {
    double lowest = 0.0;      ///< N
    double highest = 0.0;     ///< N
    int steps = 0;            ///< forces of the scan, even in ratio, >= 2
    double middle = 0.0;      ///< N, whose interval counts
    double precision = 0.02;  ///< relative, of each edge
    Kernel kernel = Kernel::lanes;
    std::stop_token stop;  ///< asked often; then the work ends with Stopped
};

/// The answer to one force: does it play, and what does the string do?
struct ForceAnswer {
    bool plays = false;
    Motion motion = Motion::silent;
};

/// The answers to many forces at once.
using AskForces = std::function<std::vector<ForceAnswer>(std::span<const double> forces)>;

/// Scans, then narrows each change from playing to not playing down to the precision: by as many forces at a time as
/// the kernel takes, shared among the changes; the reference halves.
ForceWindow find_force_window(const ForceScan& scan, const AskForces& ask);
/// The same, one force after another.
ForceWindow find_force_window(const ForceScan& scan, const std::function<ForceAnswer(double force)>& ask);

/// A scan that reaches past both limits of the note at this place and speed, through the middle of the player's range:
/// from an eighth of the lightest stroke to three times the closed form's greatest force, at most eight times the
/// firmest stroke.
/// Kernel and stop are the workers'.
ForceScan usual_scan(const Note& note, const Player& player, double contact_point, const Workers& workers = {});

/// Forces at which the ideal Helmholtz motion, once there, persists.
ForceWindow held_window(const Note& note, const Player& player, double contact_point, const ForceScan& scan,
                        int times = 1);
/// Forces at which a stroke from rest speaks.
ForceWindow started_window(const Note& note, const Player& player, double contact_point, const ForceScan& scan,
                           int times = 1);

/// Do strokes from rest speak?
struct StartedForces {
    double contact_point;            ///< m
    std::span<const double> forces;  ///< N
    Kernel kernel;
    std::stop_token stop;
};
std::vector<ForceAnswer> started_answers(const Note& note, const Player& player, const StartedForces& asked,
                                         int times = 1);

/// Does a started stroke speak in time?
bool speaks(const StrokeResult& result, const Note& note, const Player& player);

}  // namespace sim
