// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/window_chart.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gui::charts {

/// How soon a beginning settles, or what hinders it.  Each is drawn with a shape and a shade of its own.
enum class StartStep { quick, strict, lenient, late, slipping, choked, wrong_motion, stuck };
inline constexpr std::size_t start_step_count = 8;

/// One beginning.
struct StartChartCell {
    StartStep step = StartStep::stuck;  ///< of the run of exactly this force and pace
    bool strict = false;                ///< by vote of the varied runs, within the strict limit …
    bool lenient = false;
    bool unsure = false;  ///< the runs did not all vote alike

    bool operator==(const StartChartCell&) const = default;
};

/// Force against pace (acceleration, or time of the force's rise), both axes logarithmic.
///
/// Forces and paces rise, are above 0, and two or more each; there are as many cells as forces times paces.  Otherwise
/// no cells are drawn.
struct StartChart {
    std::string title;
    std::string subtitle;
    std::string pace_title;  ///< with its unit
    std::vector<double> paces;
    std::vector<double> forces;         ///< N
    std::vector<StartChartCell> cells;  ///< [pace][force], force fastest
    double strict_ms = 0.0;             ///< limits, for the legend
    double lenient_ms = 0.0;
    std::optional<ForceRange> player_force;
    std::optional<double> player_pace;
    std::optional<double> middle_force;  ///< N, at which the best pace is given
    std::optional<double> best_pace;
    std::string warning;             ///< drawn large; empty: none
    std::vector<std::string> notes;  ///< sentences beside the chart

    bool operator==(const StartChart&) const = default;
};

}  // namespace gui::charts
