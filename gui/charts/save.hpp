// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/bridge_chart.hpp"
#include "gui/charts/climb_chart.hpp"
#include "gui/charts/ends_chart.hpp"
#include "gui/charts/interval_chart.hpp"
#include "gui/charts/passage_chart.hpp"
#include "gui/charts/recording_chart.hpp"
#include "gui/charts/stack_chart.hpp"
#include "gui/charts/start_chart.hpp"
#include "gui/charts/sweep_chart.hpp"
#include "gui/charts/tone_map_chart.hpp"
#include "gui/charts/tornado_chart.hpp"
#include "gui/charts/window_chart.hpp"

#include <filesystem>
#include <memory>
#include <string>
#include <variant>

namespace analysis {
class OutputFile;
}
class QGraphicsScene;

namespace gui::charts {

/// Any chart; each kind turns into it by itself: save_chart(WindowChart{…}, "w.png").
using Chart = std::variant<WindowChart, ClimbChart, SweepChart, IntervalChart, TornadoChart, EndsChart, StartChart,
                           BridgeChart, StackChart, ToneMapChart, RecordingChart, PassageChart>;

/// InputError, naming the endings that are accepted, unless the place ends in .png, .svg or .pdf (any case).
void require_chart_ending(const std::filesystem::path& place);

/// Writes the chart whole or not at all: .png (1200 x 800 px), .svg or .pdf (one page of the same shape).
/// InputError for another ending, OutputError if it can't be written.  Needs a ChartSession or QApplication; its
/// thread.
void save_chart(const Chart& chart, const std::filesystem::path& place);
/// As above into a place made ready before; the caller commits.
void fill_chart(const analysis::OutputFile& file, const Chart& chart);

/// The chart as one <svg> element without XML heading, to stand in an HTML page.
std::string chart_svg(const Chart& chart);

/// The chart as a scene of 1200 x 800, for a view on screen and for tests.
std::unique_ptr<QGraphicsScene> chart_scene(const Chart& chart);

}  // namespace gui::charts
