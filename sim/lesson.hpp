// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"
#include "sim/climb.hpp"
#include "sim/rule.hpp"
#include "sim/window.hpp"

#include <vector>

/// What a teacher hands out: one string's climb, to be seen, heard and measured.
namespace sim {

struct LessonPlan {
    ClimbPlan climb;
    std::vector<double> heard;  ///< semitones, rising, at least one, each one of the climb's stops
    double seconds = 0.8;       ///< how long each stop sounds
};

/// One stop to listen to.  One gain for the whole lesson, so that all levels compare.
struct HeardStop {
    std::size_t index = 0;         ///< into Climb::stops
    analysis::Signal left_behind;  ///< no samples where no bow can stand
    analysis::Signal follows;      ///< no samples where nothing speaks
};

struct Lesson {
    Climb climb;
    RuleAnswer rule;  ///< what becomes of the rule on this string
    std::vector<HeardStop> heard;
    analysis::Signal whole_left_behind;  ///< the whole climb, silence where no bow can stand
    analysis::Signal whole_follows;
    std::size_t shown = 0;  ///< stop of the climb whose window is given: of the heard ones, the nearest to the octave
    Window window;
};

/// Stops worth hearing: the lowest, a fifth, an octave and an octave and a fifth above the open string, and the
/// highest, as far as `stops` (rising) has them.
std::vector<double> usual_heard(const std::vector<double>& stops);

Lesson make_lesson(const Preset& preset, const PresetString& string, const LessonPlan& plan, const Workers& workers);

}  // namespace sim
