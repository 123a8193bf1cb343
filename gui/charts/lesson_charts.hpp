// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/lesson_page.hpp"

#include <vector>

namespace gui::charts {

/// The charts of a lesson's page: the climb, its tone, and the window of one stop.  Needs a ChartSession or
/// QApplication; its thread.
std::vector<sim::report::PageChart> lesson_charts(const sim::report::AskedLesson& asked, const sim::Lesson& lesson);

}  // namespace gui::charts
