// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/match_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/sheet.hpp"

#include <algorithm>

namespace gui::charts {
namespace {

constexpr double gap = 74.0;          // px between plots
constexpr double place_share = 0.27;  // of the height
constexpr double level_share = 0.45;

const QPen likelihood_pen = style::pen(style::blue, 2.2);
const QPen best_pen = style::pen(style::ink, 1.6, {5, 3});
const QPen simulated_pen = style::pen(style::blue, 2.0);
const QPen heard_pen = style::pen(style::red, 1.6);
const QPen body_pen = style::pen(style::green, 1.4, {6, 3});
const QPen body_edge_pen = style::pen(style::green, 0.8, {1, 3});
const QPen region_pen = style::pen(style::blue, 1.0);
const QPen band_pen = style::pen(style::green, 1.2);
const MarkStyle heard_mark{.shape = MarkShape::disc, .colour = style::red, .size = 7.0, .layer = style::top_mark_layer};
const MarkStyle simulated_mark{
    .shape = MarkShape::open_square, .colour = style::blue, .size = 8.0, .layer = style::mark_layer};

Hatch region_hatch() { return {.pen = region_pen, .apart = 9.0, .rising = true}; }
Hatch band_hatch() { return {.pen = band_pen, .apart = 12.0, .rising = false}; }

Scale place_scale(const MatchChart& chart) {
    Extent extent(true);
    double most = 0.0;
    for (const double value : chart.likelihood) most = std::max(most, value);
    for (std::size_t i = 0; i < chart.contact_mm.size(); ++i)
        if (chart.likelihood[i] > 0.002 * most) extent.add(chart.contact_mm[i]);
    for (const auto& region : {chart.region, chart.band}) {
        if (!region) continue;
        extent.add(region->near_mm / 1.15);
        extent.add(region->far_mm * 1.15);
    }
    return extent.scale(0.06);
}

/// In shares of the greatest.
void draw_place(const MatchChart& chart, Panel& panel) {
    if (chart.band) panel.add_strip(chart.band->near_mm, chart.band->far_mm, style::faint_grey, band_hatch());
    if (chart.region) panel.add_strip(chart.region->near_mm, chart.region->far_mm, style::pale_blue, region_hatch());
    const double most = std::max(1e-300, *std::ranges::max_element(chart.likelihood));
    Polyline line;
    for (std::size_t i = 0; i < chart.contact_mm.size(); ++i)
        line.push_back({chart.contact_mm[i], chart.likelihood[i] / most});
    panel.add_line(line, {.pen = likelihood_pen, .halo = true});
    panel.add_upright_line(chart.best_mm, best_pen);
}

struct LevelScales {
    Scale hz;
    Scale level;
};

LevelScales level_scales(const MatchChart& chart) {
    Extent hz(true);
    Extent level(false);
    for (const MatchPartial& partial : chart.partials) {
        hz.add(partial.hz);
        level.add(partial.heard_db);
        level.add(partial.simulated_db);
        level.add(partial.body_db - partial.body_error_db);
        level.add(partial.body_db + partial.body_error_db);
    }
    return {hz.scale(0.04), level.scale(0.05)};
}

void draw_levels(const MatchChart& chart, Panel& panel) {
    Polyline heard, simulated, body, body_low, body_high;
    for (const MatchPartial& partial : chart.partials) {
        heard.push_back({partial.hz, partial.heard_db});
        simulated.push_back({partial.hz, partial.simulated_db});
        body.push_back({partial.hz, partial.body_db});
        body_low.push_back({partial.hz, partial.body_db - partial.body_error_db});
        body_high.push_back({partial.hz, partial.body_db + partial.body_error_db});
    }
    panel.add_line(body, {.pen = body_pen});
    panel.add_line(body_low, {.pen = body_edge_pen});
    panel.add_line(body_high, {.pen = body_edge_pen});
    panel.add_line(simulated, {.pen = simulated_pen});
    panel.add_line(heard, {.pen = heard_pen});
    panel.add_marks(simulated, simulated_mark);
    panel.add_marks(heard, heard_mark);
}

Scale period_scale(const MatchChart& chart) {
    Extent extent(false);
    for (const auto* period : {&chart.period_heard, &chart.period_simulated})
        for (const double value : *period) extent.add(value);
    return extent.scale(0.06);
}

Polyline period_line(const std::vector<double>& values) {
    Polyline line;
    for (std::size_t j = 0; j < values.size(); ++j)
        line.push_back({static_cast<double>(j) / static_cast<double>(values.size()), values[j]});
    if (!values.empty()) line.push_back({1.0, values.front()});
    return line;
}

void draw_period(const MatchChart& chart, Panel& panel) {
    panel.add_line(period_line(chart.period_simulated), {.pen = simulated_pen});
    panel.add_line(period_line(chart.period_heard), {.pen = heard_pen});
}

void add_place_legend(const MatchChart& chart, SideColumn& side) {
    side.add_heading("where the bow was");
    side.add_line("likelihood of each contact point, of the greatest", likelihood_pen);
    if (chart.region)
        side.add_sample(QString::fromStdString(chart.region_name), [](QGraphicsScene& scene, const QRectF& place) {
            add_hatched_box(scene, place, style::pale_blue, region_hatch());
        });
    side.add_line("likeliest stroke", best_pen);
    if (chart.band)
        side.add_sample("contact band of this note", [](QGraphicsScene& scene, const QRectF& place) {
            add_hatched_box(scene, place, style::faint_grey, band_hatch());
        });
    side.add_space(8.0);
}

void add_level_legend(SideColumn& side) {
    side.add_heading("partials and one period");
    side.add_line("recording", heard_pen, {heard_mark});
    side.add_line("likeliest simulated stroke, through body and room as estimated", simulated_pen, {simulated_mark});
    side.add_line("what body and room add, give or take one standard deviation; its mean is drawn at 0", body_pen);
    side.add_space(8.0);
}

/// No note was found, of which a remark would say why: the axes alone are drawn.
bool is_blank(const MatchChart& chart) {
    return chart.contact_mm.empty() && chart.partials.empty() && chart.period_heard.empty() && chart.remarks.empty();
}

void add_side(const MatchChart& chart, SideColumn side) {
    if (!chart.contact_mm.empty()) add_place_legend(chart, side);
    if (!chart.partials.empty() || is_blank(chart)) add_level_legend(side);
    for (const std::string& remark : chart.remarks) side.add_note(remark);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const MatchChart& chart) {
    Sheet sheet = make_sheet({.title = chart.title, .subtitle = chart.subtitle, .warning = ""});
    const double top = sheet.content_top + 12.0;
    const double height = style::sheet_height - 58.0 - top - 2.0 * gap;
    const double width = style::plot_right - style::plot_left;
    const QRectF above(style::plot_left, top, width, height * place_share);
    const QRectF middle(style::plot_left, above.bottom() + gap, width, height * level_share);
    const QRectF below(style::plot_left, middle.bottom() + gap, width, height * (1.0 - place_share - level_share));
    if (!chart.contact_mm.empty()) {
        Panel place(*sheet.scene, above, place_scale(chart), {.low = 0.0, .high = 1.08});
        place.add_x_axis("contact point, mm from the bridge");
        place.add_y_axis("likelihood, of the greatest");
        draw_place(chart, place);
    }
    if (!chart.partials.empty() || is_blank(chart)) {
        const LevelScales scales = level_scales(chart);
        Panel levels(*sheet.scene, middle, scales.hz, scales.level);
        levels.add_x_axis("partial, Hz");
        levels.add_y_axis("level, dB");
        draw_levels(chart, levels);
    }
    if (!chart.period_heard.empty() || is_blank(chart)) {
        Panel period(*sheet.scene, below, {.low = 0.0, .high = 1.0}, period_scale(chart));
        period.add_x_axis("time, periods");
        period.add_y_axis("sound, RMS = 1");
        draw_period(chart, period);
    }
    add_side(chart, SideColumn(*sheet.scene, top));
    return std::move(sheet.scene);
}

}  // namespace gui::charts
