// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/match_chart.hpp"
#include "sim/report/match_report.hpp"

namespace gui::charts {

/// One note of a recording held against the instrument's strokes; the command line and the window show the same.
MatchChart match_chart(const sim::report::AskedMatch& asked, const sim::match::Match& match, std::size_t note);

}  // namespace gui::charts
