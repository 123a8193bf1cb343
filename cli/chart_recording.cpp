// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"
#include "gui/charts/answers.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"

namespace cli {

void draw_recording_chart(const analysis::OutputFile& file, const sim::report::AskedRecording& asked,
                          const analysis::Recording& recording) {
    const gui::charts::ChartSession session;
    gui::charts::fill_chart(file, gui::charts::recording_chart(asked, recording));
}

}  // namespace cli
