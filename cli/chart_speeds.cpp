// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"

#include "analysis/units.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/scale.hpp"
#include "gui/charts/session.hpp"

#include <algorithm>

namespace cli {
namespace {

using analysis::mm_from_metres;
namespace charts = gui::charts;

charts::StackPoint speed_point(const sim::SpeedRow& row) {
    charts::StackPoint point{.x = row.player.speed, .y = {}, .low = {}, .high = {}};
    if (!row.is_secure()) return point;
    point.y = mm_from_metres(*row.band.best);
    point.low = mm_from_metres(row.place()->near);
    point.high = mm_from_metres(row.place()->far);
    point.weak = !row.band.band;
    return point;
}

charts::StackPoint security_point(const sim::SpeedRow& row) {
    return {.x = row.player.speed, .y = row.is_secure() ? row.band.at_best.security : 0.0, .low = {}, .high = {}};
}

/// One line a stop.  The dynamics stand among the other strokes of one force / speed; none is drawn twice.
charts::StackPanel speed_panel(const sim::SpeedStudy& study, bool same_forces, const charts::SweepAxis& axis,
                               charts::StackPoint (*point)(const sim::SpeedRow&)) {
    charts::StackPanel panel{.title = {}, .y = axis, .lines = {}};
    for (std::size_t i = 0; i < study.rows.size(); ++i) {
        const sim::SpeedRow& row = study.rows[i];
        if (i == 0 || !(row.note.stop == study.rows[i - 1].note.stop)) panel.lines.emplace_back();
        if ((row.rule == sim::ForceRule::same_forces) == same_forces) panel.lines.back().push_back(point(row));
    }
    for (auto& line : panel.lines) {
        std::ranges::stable_sort(line, {}, &charts::StackPoint::x);
        const auto doubled = std::ranges::unique(line, {}, &charts::StackPoint::x);
        line.erase(doubled.begin(), doubled.end());
    }
    return panel;
}

/// "Soft to loud: pp at 0.1, p at 0.14, … m/s."
std::string dynamics_note(const sim::SpeedStudy& study) {
    std::string title = "Soft to loud, force and speed together:";
    for (const sim::Dynamic& dynamic : sim::dynamics)
        title += std::string(&dynamic == &sim::dynamics.front() ? " " : ", ") + std::string(dynamic.name) + " at " +
                 charts::number_text(dynamic.factor * study.player.speed);
    return title + " m/s.";
}

}  // namespace

void draw_speeds_chart(const analysis::OutputFile& file, const sim::report::AskedSpeeds& asked,
                       const sim::SpeedStudy& study) {
    charts::StackChart chart;
    chart.title = sim::report::speeds_heading(asked, study) + ": where to bow, slow to quick";
    chart.subtitle = sim::report::player_line(study.player) + " where nothing else is said";
    chart.x = {.title = "bow speed, m/s", .logarithmic = true};
    for (std::size_t i = 0; i < study.rows.size(); ++i) {
        const sim::Note& note = study.rows[i].note;
        if (i == 0 || !(note.stop == study.rows[i - 1].note.stop))
            chart.names.push_back("best contact point, stop " + charts::number_text(note.stop) + " (" +
                                  sim::pitch_name(fundamental(note.string), asked.reference_pitch) + ")");
    }
    const charts::SweepAxis place{.title = "contact point, mm", .logarithmic = true};
    const charts::SweepAxis secure{.title = "security, share"};
    chart.panels = {speed_panel(study, true, place, speed_point), speed_panel(study, true, secure, security_point),
                    speed_panel(study, false, place, speed_point), speed_panel(study, false, secure, security_point)};
    chart.panels[0].title = sim::report::force_rule_words(sim::ForceRule::same_forces);
    chart.panels[2].title = sim::report::force_rule_words(sim::ForceRule::dynamics);
    chart.notes = {
        "Contact points are mm from the bridge. Security: share of strokes that speak and keep their tone, at "
        "the best contact point.",
        dynamics_note(study)};
    chart.bar_name = "contact band, near to far";
    chart.weak_bar_name = "no band: the most secure stretch";
    chart.missing_name = "no stroke keeps its tone";
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

}  // namespace cli
