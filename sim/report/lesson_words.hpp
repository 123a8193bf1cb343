// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/lesson.hpp"

#include <string>
#include <vector>

/// What a lesson says, in a player's words; the page, the table and the JSON say the same.
namespace sim::report {

/// "open string", "stop 12 (octave)": how a stop is called.
std::string stop_words(double stop);
/// The same inside a sentence: "the open string".
std::string the_stop(double stop);
/// The same as a heading: "Open string".
std::string stop_heading(double stop);

/// "sings", "growls": what the string does, for who has never heard of its motions.
std::string motion_words(Motion motion);

/// "58 of 100 strokes"
std::string strokes_of_100(double share);

/// What common practice says and how far the simulation of this string agrees.
std::string rule_words(const RuleAnswer& rule);

/// What to listen for where the bow was left behind, from the measured differences alone: motion, pitch from 10 cents
/// on, level from 3 dB on, brightness from a fifth on.
std::string listen_for(const ClimbStop& stop);

/// What a best place is worth that no band surrounds; empty where every stop of the climb has a band.
std::string bandless_words(const Climb& climb);

/// How to practise it, step by step.  Common practice, no source.
std::vector<std::string> practice_steps(const Lesson& lesson);

}  // namespace sim::report
