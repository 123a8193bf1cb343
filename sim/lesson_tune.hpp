// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/fingering.hpp"
#include "sim/passage/simulated.hpp"
#include "sim/score/read_tune.hpp"
#include "sim/sound/passage_takes.hpp"

namespace sim {

/// A tune that a lesson may hold: fingered the easiest way, bowed and played both ways.
struct LessonTune {
    score::ReadTune read;
    passage::Fingering fingering;
    passage::Passage bow;
    passage::SimulatedPassage played;
    sound::PassageTakes takes;
};

/// InputError where the instrument can't play it.
LessonTune make_lesson_tune(const score::ReadTune& read, const Preset& preset, const passage::BowPlan& plan,
                            const Workers& workers);

}  // namespace sim
