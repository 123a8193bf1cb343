// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"

#include "gui/charts/lesson_charts.hpp"
#include "gui/charts/session.hpp"

namespace cli {

std::vector<sim::report::PageChart> lesson_charts(const sim::report::AskedLesson& asked, const sim::Lesson& lesson,
                                                  const sim::LessonTune* tune) {
    const gui::charts::ChartSession session;
    return gui::charts::lesson_charts(asked, lesson, tune);
}

}  // namespace cli
