// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/lesson_charts.hpp"

#include "gui/charts/answers.hpp"
#include "gui/charts/save.hpp"
#include "sim/report/lesson_words.hpp"

namespace gui::charts {
namespace {

sim::report::PageChart tune_chart(const sim::report::AskedLesson& asked, const sim::LessonTune& tune) {
    const sim::report::AskedPassage passage{
        .run = asked.run, .preset = asked.preset, .tune = tune.read, .tune_hash = {}, .chosen = 0};
    return {.svg = chart_svg(passage_chart(passage, tune.fingering, {tune.bow, tune.played})),
            .caption = "The tune: notes and hand places, contact bands and the way of the bow.",
            .description =
                "Chart: the tune's notes and hand places over time, and the contact band of each note with the "
                "way of the bow."};
}

}  // namespace

std::vector<sim::report::PageChart> lesson_charts(const sim::report::AskedLesson& asked, const sim::Lesson& lesson,
                                                  const sim::LessonTune* tune) {
    const sim::report::AskedClimb climb{
        .run = asked.run, .bridge = asked.preset.bridge, .reference_pitch = asked.preset.reference_pitch};
    const sim::ClimbStop& shown = lesson.climb.stops[lesson.shown];
    const sim::report::Asked note{.run = asked.run,
                                  .note = shown.note,
                                  .player = asked.preset.player,
                                  .reference_pitch = asked.preset.reference_pitch};
    const std::string stop = sim::report::stop_words(shown.note.stop);
    std::vector<sim::report::PageChart> made{
        {.svg = chart_svg(climb_chart(climb, lesson.climb)),
         .caption = "Where the bow must go as the stop climbs, and how sure it is there.",
         .description = "Chart: best contact point and contact band in millimetres and as a share of the sounding "
                        "length, and the security of the bow that follows and the bow left behind, over the stops."},
        {.svg = chart_svg(climb_tone_chart(climb, lesson.climb)),
         .caption = "The tone as the stop climbs, with the bow that follows and the bow left behind.",
         .description = "Chart: pitch in cents from the note, brightness, level and clarity of both bows over the "
                        "stops."},
        {.svg = chart_svg(window_chart(note, lesson.window)),
         .caption = "Every place and force for one note, " + stop + ": what the string does there.",
         .description = "Chart: over contact point and bow force, what the string does at " + stop +
                        ", with the contact band and the closed-form limits of the force."}};
    if (tune != nullptr) made.push_back(tune_chart(asked, *tune));
    return made;
}

}  // namespace gui::charts
