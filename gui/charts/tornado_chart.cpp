// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/tornado_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/sheet.hpp"

#include <QGraphicsLineItem>
#include <QGraphicsRectItem>
#include <QGraphicsScene>

#include <algorithm>
#include <array>
#include <cmath>

namespace gui::charts {
namespace {

constexpr double names_right = 236.0;
constexpr double panel_gap = 30.0;
constexpr double title_room = 44.0;
constexpr double foot_room = 62.0;
constexpr double bar_share = 0.4;            // of a row, each of the two
constexpr std::array least_reach{0.9, 1.1};  // so that next to nothing looks like next to nothing
constexpr double cross_inset = 9.0;
const TextStyle panel_title{.pixels = 13, .bold = true};

const QPen down_outline = style::pen(style::ink, 1.2);
const Hatch down_hatch{.pen = style::pen(style::ink, 1.0), .apart = 4.0, .rising = true};
const QColor noise_tint(0xd4, 0xd4, 0xd4);
const QPen unchanged = style::pen(style::ink, 1.4);

bool is_shown(const std::optional<double>& ratio) { return ratio && std::isfinite(*ratio) && *ratio > 0.0; }

void draw_up(QGraphicsScene& scene, const QRectF& place) {
    scene.addRect(place, Qt::NoPen, style::blue)->setZValue(style::mark_layer);
}

void draw_down(QGraphicsScene& scene, const QRectF& place) {
    add_hatched_box(scene, place, Qt::white, down_hatch);
    scene.addRect(place, down_outline)->setZValue(style::mark_layer);
}

void draw_noise(QGraphicsScene& scene, const QRectF& place) {
    scene.addRect(place, Qt::NoPen, noise_tint)->setZValue(2 * style::tint_layer + 1.0);
}

MarkStyle missing_mark() {
    return {.shape = MarkShape::cross, .colour = style::ink, .size = 9.0, .layer = style::top_mark_layer};
}

Scale scale_of(const TornadoChart& chart, std::size_t k) {
    Extent extent(true);
    for (const double ratio : least_reach) extent.add(ratio);
    const auto add = [&](const TornadoBar& bar) {
        if (bar.up) extent.add(*bar.up);
        if (bar.down) extent.add(*bar.down);
    };
    for (const TornadoRow& row : chart.rows) add(row.bars[k]);
    if (chart.panels[k].noise) add(*chart.panels[k].noise);
    return extent.scale(0.06);
}

/// Between 1 and the ratio, over part of a row's height.
QRectF bar_place(const Panel& panel, double ratio, double top, double height) {
    const double from = panel.x_at(1.0);
    const double to = panel.x_at(ratio);
    return QRectF(std::min(from, to), top, std::abs(to - from), height);
}

void add_noise(const TornadoBar& noise, const Panel& panel, QGraphicsScene& scene) {
    const auto& [up, down] = noise;
    for (const auto& ratio : {up, down})
        if (is_shown(ratio)) draw_noise(scene, bar_place(panel, *ratio, panel.plot().top(), panel.plot().height()));
}

void add_bars(const TornadoBar& bar, double top, double height, const Panel& panel, QGraphicsScene& scene) {
    const double each = bar_share * height;
    const double first = top + (0.5 - bar_share) * height;
    QList<QPointF> missing;
    const auto add = [&](const std::optional<double>& ratio, double from, auto draw) {
        if (is_shown(ratio))
            draw(scene, bar_place(panel, *ratio, from, each));
        else
            missing.append(QPointF(panel.plot().right() - cross_inset, from + each / 2.0));
    };
    add(bar.up, first, draw_up);
    add(bar.down, first + each, draw_down);
    add_marks(scene, missing, missing_mark());
}

void add_panel(const TornadoChart& chart, std::size_t k, const QRectF& plot, QGraphicsScene& scene) {
    const double count = static_cast<double>(std::max<std::size_t>(chart.rows.size(), 1));
    Panel panel(scene, plot, scale_of(chart, k), {.low = 0.0, .high = count, .logarithmic = false});
    panel.add_x_axis("times the unchanged");
    panel.add_upright_line(1.0, unchanged);
    if (chart.panels[k].noise) add_noise(*chart.panels[k].noise, panel, scene);
    const double height = plot.height() / count;
    for (std::size_t i = 1; i < chart.rows.size(); ++i) {
        const double y = plot.top() + static_cast<double>(i) * height;
        scene.addLine(plot.left(), y, plot.right(), y, style::pen(style::grid, 1.0))->setZValue(style::grid_layer);
    }
    for (std::size_t i = 0; i < chart.rows.size(); ++i)
        add_bars(chart.rows[i].bars[k], plot.top() + static_cast<double>(i) * height, height, panel, scene);
    const QStringList lines = wrapped(QString::fromStdString(chart.panels[k].title), plot.width(), panel_title, 2);
    double y = plot.top() - 6.0 - static_cast<double>(lines.size()) * line_height(panel_title);
    for (const QString& line : lines) {
        add_text(scene, line, {plot.center().x(), y}, Hold::centre_top, panel_title);
        y += line_height(panel_title);
    }
}

void add_names(const TornadoChart& chart, const QRectF& plots, QGraphicsScene& scene) {
    const double height = plots.height() / static_cast<double>(std::max<std::size_t>(chart.rows.size(), 1));
    const TextStyle text{.pixels = std::clamp(static_cast<int>(0.7 * height), 5, 13)};
    const double width = names_right - style::margin - 10.0;
    for (std::size_t i = 0; i < chart.rows.size(); ++i) {
        const QStringList lines = wrapped(QString::fromStdString(chart.rows[i].name), width, text, 1);
        const double y = plots.top() + (static_cast<double>(i) + 0.5) * height;
        if (!lines.isEmpty()) add_text(scene, lines.front(), {names_right - 8.0, y}, Hold::right_middle, text);
    }
}

bool misses_some(const TornadoChart& chart) {
    return std::ranges::any_of(chart.rows, [](const TornadoRow& row) {
        return std::ranges::any_of(row.bars,
                                   [](const TornadoBar& bar) { return !is_shown(bar.up) || !is_shown(bar.down); });
    });
}

void add_legend(const TornadoChart& chart, SideColumn& side) {
    side.add_sample(QString::fromStdString(chart.up_name), draw_up);
    side.add_sample(QString::fromStdString(chart.down_name), draw_down);
    if (std::ranges::any_of(chart.panels, [](const TornadoPanel& panel) { return panel.noise.has_value(); }))
        side.add_sample(QString::fromStdString(chart.noise_name), draw_noise);
    if (misses_some(chart))
        side.add_mark(chart.missing_name.empty() ? "no value" : QString::fromStdString(chart.missing_name),
                      missing_mark());
    side.add_space(8.0);
    for (const std::string& note : chart.notes) side.add_note(note);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const TornadoChart& chart) {
    Sheet sheet = make_sheet({.title = chart.title, .subtitle = chart.subtitle, .warning = ""});
    const double top = sheet.content_top + title_room;
    const QRectF plots(QPointF(names_right, top), QPointF(style::plot_right, style::sheet_height - foot_room));
    const double count = static_cast<double>(std::max<std::size_t>(chart.panels.size(), 1));
    const double width = (plots.width() - (count - 1.0) * panel_gap) / count;
    for (std::size_t k = 0; k < chart.panels.size(); ++k) {
        const double left = plots.left() + static_cast<double>(k) * (width + panel_gap);
        add_panel(chart, k, QRectF(left, top, width, plots.height()), *sheet.scene);
    }
    add_names(chart, plots, *sheet.scene);
    SideColumn side(*sheet.scene, top);
    add_legend(chart, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
