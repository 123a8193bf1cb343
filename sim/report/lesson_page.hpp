// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/lesson.hpp"
#include "sim/lesson_tune.hpp"
#include "sim/report/climb_report.hpp"

#include <string>
#include <vector>

/// A lesson as a page to hand out, and as texts.
namespace sim::report {

/// What the texts of a lesson speak of.
struct AskedLesson {
    RunRecord run;
    Preset preset;        ///< with the settings in force
    PresetString string;  ///< the one that climbs
};

/// A finished chart for the page.
struct PageChart {
    std::string svg;          ///< one well-formed <svg> element
    std::string caption;      ///< what it shows
    std::string description;  ///< the same at length, for who can't see it
};

/// One self-contained page: HTML5 that is well-formed XML too, no scripts, no network; sounds and charts are in it.
/// The same bytes for the same run.
std::string lesson_html(const AskedLesson& asked, const Lesson& lesson, const std::vector<PageChart>& charts,
                        const LessonTune* tune = nullptr);

std::string lesson_json(const AskedLesson& asked, const Lesson& lesson, const LessonTune* tune = nullptr);
/// A line for each stop.
std::string lesson_csv(const AskedLesson& asked, const Lesson& lesson);
std::string lesson_table(const AskedLesson& asked, const Lesson& lesson);
/// What the page's rule says, what became of the tune, and what to mind.
std::string lesson_in_words(const AskedLesson& asked, const Lesson& lesson, const LessonTune* tune = nullptr);

}  // namespace sim::report
