// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"
#include "gui/charts/gauge_answers.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"

namespace cli {

void draw_gauges_chart(const analysis::OutputFile& file, const sim::report::AskedGauges& asked,
                       const sim::GaugeStudy& study) {
    const gui::charts::ChartSession session;
    gui::charts::fill_chart(file, gui::charts::gauges_chart(asked, study));
}

}  // namespace cli
