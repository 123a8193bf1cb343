// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/errors.hpp"
#include "cli/chart_calls.hpp"
#include "gui/charts/board_strips.hpp"
#include "gui/charts/session.hpp"
#include "sim/preset_reader.hpp"

namespace cli {

namespace charts = gui::charts;

namespace {

charts::Paper paper_of(const std::string& name) {
    const std::optional<charts::Paper> paper = charts::paper_from_name(name);
    if (!paper) throw analysis::InputError("--paper", "must be a4 or letter, is \"" + sim::one_line(name) + "\"");
    return *paper;
}

}  // namespace

void require_paper(const std::string& name) { paper_of(name); }

void require_strip_place(const std::filesystem::path& place) { charts::require_strip_ending(place); }

void draw_fret_strip(const analysis::OutputFile& file, const sim::report::AskedFrets& asked,
                     const sim::FretTable& table, const std::string& paper) {
    const charts::ChartSession session;
    charts::fill_strip(file, charts::fret_strip(asked.preset, table), paper_of(paper));
}

void draw_contact_ruler(const analysis::OutputFile& file, const sim::report::AskedFrets& asked, const sim::Climb& climb,
                        const std::string& paper) {
    const charts::ChartSession session;
    charts::fill_strip(file, charts::contact_ruler(asked.preset, climb), paper_of(paper));
}

}  // namespace cli
