// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"
#include "gui/charts/match_answer.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"

namespace cli {

void draw_match_chart(const analysis::OutputFile& file, const sim::report::AskedMatch& asked,
                      const sim::match::Match& match, std::size_t note) {
    const gui::charts::ChartSession session;
    gui::charts::fill_chart(file, gui::charts::match_chart(asked, match, note));
}

}  // namespace cli
