// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/judged_stroke.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace sim {

/// How the bow comes to the string at the beginning of a note.
enum class StartKind {
    from_rest,  ///< it lies on the string with its whole force and gathers speed evenly, up to its full speed
    crossing    ///< it comes from the next string at full speed, and its force rises evenly to the whole
};
std::string_view start_kind_name(StartKind kind);
std::optional<StartKind> start_kind_from_name(std::string_view name);

/// How late a note may settle and still count as begun cleanly: the longer of the two, from the first main slip.
struct Acceptance {
    double time = 0.0;     ///< s
    double periods = 0.0;  ///< of the note

    bool operator==(const Acceptance&) const = default;
};
double accepted_time(const Acceptance& acceptance, double period);

/// Two limits, the strict one never longer than the lenient.
///
/// source   [Guettler1997], from memory: about 50 and 90 ms on a 196 Hz string (10 and 18 periods) were still accepted;
///          which of them belongs to which fault is not settled here, so each counts for every fault
enum class StartLimit { strict, lenient };
std::string_view start_limit_name(StartLimit limit);
inline constexpr Acceptance usual_strict{.time = 0.050, .periods = 10.0};

/// What came of a beginning.  A note that never settles is named, from rest, by its first gap; in a crossing, where the
/// first slips come while the force still rises, by the motion at the end, as everywhere else.
///
/// source   [Guettler2002], from memory: under the wedge the first periods hold several slips, over it they are long
enum class StartOutcome {
    clean,         ///< Helmholtz motion within the limit, held to the end of the run
    late,          ///< the same, but after the limit
    slipping,      ///< too little force: the second slip follows within a period, or the hair slides
    choked,        ///< too much force: the second slip comes more than a period later
    wrong_motion,  ///< S-motion
    stuck          ///< no main slip in the run
};
/// As in tables and JSON.
std::string_view start_outcome_name(StartOutcome outcome);

/// What stays the same over a map of beginnings.
struct StartCase {
    StartKind kind = StartKind::from_rest;
    double contact_point = 0.0;  ///< m from the bridge
    double speed = 0.0;          ///< m/s, once risen
    Acceptance strict = usual_strict;
    Acceptance lenient;

    bool operator==(const StartCase&) const = default;
};

/// What changes.
struct StartPoint {
    double force = 0.0;  ///< N, once risen
    double pace = 0.0;   ///< from rest: m/s^2, of the bow; crossing: s, in which the force rises

    bool operator==(const StartPoint&) const = default;
};

/// One run.
struct StartRun {
    std::optional<double> first_slip;  ///< s from the beginning to the first main slip
    std::optional<double> transient;   ///< s from there to one slip a period; none where that is never reached
    std::optional<double> first_gap;   ///< periods from there to the next main slip, or to the end of the run
    Motion motion = Motion::silent;    ///< at the end
    StartOutcome strict = StartOutcome::stuck;
    StartOutcome lenient = StartOutcome::stuck;

    StartOutcome outcome(StartLimit limit) const { return limit == StartLimit::strict ? strict : lenient; }
    bool operator==(const StartRun&) const = default;
};

/// How long a beginning runs: until the hair must slip (from rest: the stuck string, pulled slowly, asks for all the
/// friction there is, and a quarter more; crossing: the force has risen), the lenient limit, and 18 periods or 0.1 s.
double start_duration(const Note& note, const StartCase& start, const StartPoint& point);

/// By the reference.
StartRun play_start(const Note& note, const StartCase& start, const StartPoint& point, int times = 1);
/// Many at once, by the kernel asked for; each as it would come out alone.
std::vector<StartRun> play_starts(const Note& note, const StartCase& start, std::span<const StartPoint> points,
                                  const Workers& workers, int times = 1);

}  // namespace sim
