// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/lesson_page.hpp"

#include <vector>

namespace gui::charts {

/// The charts of a lesson's page: the climb, its tone, the window of one stop, and the tune.  Needs a ChartSession or
/// QApplication; its thread.
std::vector<sim::report::PageChart> lesson_charts(const sim::report::AskedLesson& asked, const sim::Lesson& lesson,
                                                  const sim::LessonTune* tune = nullptr);

}  // namespace gui::charts
