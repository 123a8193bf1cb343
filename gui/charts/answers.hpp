// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/climb_chart.hpp"
#include "gui/charts/passage_chart.hpp"
#include "gui/charts/recording_chart.hpp"
#include "gui/charts/stack_chart.hpp"
#include "gui/charts/window_chart.hpp"
#include "sim/report/analyse_report.hpp"
#include "sim/report/climb_report.hpp"
#include "sim/report/passage_report.hpp"
#include "sim/report/window_report.hpp"

/// Charts of the simulation's answers and of recordings; the command line and the window show the same.
namespace gui::charts {

WindowChart window_chart(const sim::report::Asked& asked, const sim::Window& window);
ClimbChart climb_chart(const sim::report::AskedClimb& asked, const sim::Climb& climb);
PassageChart passage_chart(const sim::report::AskedPassage& asked, const sim::passage::Fingering& fingering,
                           const sim::report::BowedPassage& bowed);
/// Pitch, brightness, level and clarity of both bows over the climb.
StackChart climb_tone_chart(const sim::report::AskedClimb& asked, const sim::Climb& climb);

RecordingChart recording_chart(const sim::report::AskedRecording& asked, const analysis::Recording& recording);

}  // namespace gui::charts
