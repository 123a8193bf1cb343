// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/rows_chart.hpp"
#include "sim/report/gauges_report.hpp"

namespace gui::charts {

/// Bands of every candidate, or of every string of a set, at each stop (the first four), and their pull; the command
/// line and the window show the same.
RowsChart gauges_chart(const sim::report::AskedGauges& asked, const sim::GaugeStudy& study);

}  // namespace gui::charts
