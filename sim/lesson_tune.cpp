// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/lesson_tune.hpp"

#include <utility>

namespace sim {

LessonTune make_lesson_tune(const score::ReadTune& read, const Preset& preset, const passage::BowPlan& plan,
                            const Workers& workers) {
    LessonTune tune;
    tune.read = read;
    tune.fingering = passage::find_fingerings(read.tune, preset, {.alternatives = 1, .weights = {}}).front();
    tune.bow = find_passage(read.tune, tune.fingering, preset, plan, part_of(workers, {0.0, 0.7}));
    sound::HeardPassage heard = sound::hear_passage(tune.bow, part_of(workers, {0.7, 1.0}));
    tune.played = std::move(heard.played);
    tune.takes = std::move(heard.takes);
    return tune;
}

}  // namespace sim
