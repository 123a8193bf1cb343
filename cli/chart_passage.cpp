// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/output_file.hpp"
#include "cli/chart_calls.hpp"
#include "gui/charts/answers.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"

namespace cli {

void draw_passage_chart(const analysis::OutputFile& file, const sim::report::AskedPassage& asked,
                        const sim::passage::Fingering& fingering, const sim::report::BowedPassage& bowed) {
    const gui::charts::ChartSession session;
    gui::charts::fill_chart(file, gui::charts::passage_chart(asked, fingering, bowed));
}

}  // namespace cli
