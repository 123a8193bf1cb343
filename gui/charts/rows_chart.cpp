// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/rows_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/sheet.hpp"

#include <QGraphicsLineItem>
#include <QGraphicsRectItem>
#include <QGraphicsScene>

#include <algorithm>

namespace gui::charts {
namespace {

constexpr double names_right = 236.0;
constexpr double panel_gap = 26.0;
constexpr double title_room = 44.0;
constexpr double foot_room = 62.0;
constexpr double bar_share = 0.5;  // of a row's height
constexpr double tallest_bar = 26.0;
const TextStyle panel_title{.pixels = 13, .bold = true};
const TextStyle warning_text{.pixels = style::small_px, .bold = true, .colour = style::red};

void draw_range(QGraphicsScene& scene, const QRectF& place) {
    scene.addRect(place, style::pen(style::blue, 1.4), style::mid_blue)->setZValue(style::mark_layer);
}

void draw_weak(QGraphicsScene& scene, const QRectF& place) {
    scene.addRect(place, style::pen(style::soft_ink, 1.4, {4.0, 3.0}))->setZValue(style::mark_layer);
}

void draw_amount(QGraphicsScene& scene, const QRectF& place) {
    add_hatched_box(scene, place, style::pale_grey,
                    {.pen = style::pen(style::mid_grey, 1.0), .apart = 5.0, .rising = true});
    scene.addRect(place, style::pen(style::soft_ink, 1.2))->setZValue(style::mark_layer);
}

void draw_mark(QGraphicsScene& scene, const QRectF& place) {
    const double x = place.center().x();
    scene.addLine(x, place.top() - 3.0, x, place.bottom() + 3.0, style::pen(style::ink, 3.0))
        ->setZValue(style::top_mark_layer);
}

MarkStyle amount_mark() {
    return {.shape = MarkShape::open_diamond, .colour = style::red, .size = 12.0, .layer = style::top_mark_layer};
}

MarkStyle missing_mark() {
    return {.shape = MarkShape::cross, .colour = style::ink, .size = 9.0, .layer = style::top_mark_layer};
}

Scale scale_of(const RowPanel& panel) {
    Extent extent(panel.logarithmic);
    for (const RowBar& bar : panel.bars) {
        if (bar.range) extent.add(bar.range->low);
        if (bar.range) extent.add(bar.range->high);
        if (bar.mark) extent.add(*bar.mark);
    }
    Scale scale = extent.scale(0.08);
    if (!panel.logarithmic) scale.low = 0.0;
    return scale;
}

void add_bar(const RowPanel& of, const RowBar& bar, double middle, double height, const Panel& panel,
             QGraphicsScene& scene) {
    if (!bar.range) {
        add_marks(scene, {QPointF(panel.plot().left() + 12.0, middle)}, missing_mark());
        return;
    }
    const QRectF place(QPointF(panel.x_at(bar.range->low), middle - height / 2.0),
                       QPointF(panel.x_at(bar.range->high), middle + height / 2.0));
    (of.amount ? draw_amount : bar.weak ? draw_weak : draw_range)(scene, place);
    if (!bar.mark) return;
    const double x = panel.x_at(*bar.mark);
    if (of.amount)
        add_marks(scene, {QPointF(x, middle)}, amount_mark());
    else
        draw_mark(scene, QRectF(x - 1.0, place.top(), 2.0, height));
}

void add_titles(const RowPanel& of, const QRectF& plot, QGraphicsScene& scene) {
    const QStringList lines = wrapped(QString::fromStdString(of.title), plot.width() + panel_gap - 4.0, panel_title, 2);
    double y = plot.top() - 6.0 - static_cast<double>(lines.size()) * line_height(panel_title);
    for (const QString& line : lines) {
        add_text(scene, line, {plot.center().x(), y}, Hold::centre_top, panel_title);
        y += line_height(panel_title);
    }
}

void add_panel(const RowPanel& of, const QRectF& plot, QGraphicsScene& scene) {
    const double count = static_cast<double>(std::max<std::size_t>(of.bars.size(), 1));
    Panel panel(scene, plot, scale_of(of), {.low = 0.0, .high = count, .logarithmic = false});
    panel.add_x_axis(QString::fromStdString(of.x_title));
    const double row = plot.height() / count;
    for (std::size_t i = 0; i < of.bars.size(); ++i) {
        const double top = plot.top() + static_cast<double>(i) * row;
        if (i > 0)
            scene.addLine(plot.left(), top, plot.right(), top, style::pen(style::grid, 1.0))
                ->setZValue(style::grid_layer);
        add_bar(of, of.bars[i], top + row / 2.0, std::min(tallest_bar, bar_share * row), panel, scene);
    }
    add_titles(of, plot, scene);
}

void add_names(const RowsChart& chart, const QRectF& plots, QGraphicsScene& scene) {
    const double row = plots.height() / static_cast<double>(std::max<std::size_t>(chart.names.size(), 1));
    const TextStyle text{.pixels = std::clamp(static_cast<int>(0.7 * row), 5, 13)};
    const int most_lines = row >= 2.2 * line_height(text) ? 2 : 1;
    const double width = names_right - style::margin - 10.0;
    for (std::size_t i = 0; i < chart.names.size(); ++i) {
        const QStringList lines = wrapped(QString::fromStdString(chart.names[i]), width, text, most_lines);
        double y = plots.top() + (static_cast<double>(i) + 0.5) * row -
                   0.5 * static_cast<double>(lines.size() - 1) * line_height(text);
        for (const QString& line : lines) {
            add_text(scene, line, {names_right - 8.0, y}, Hold::right_middle, text);
            y += line_height(text);
        }
    }
}

void add_legend(const RowsChart& chart, SideColumn& side) {
    const auto sample = [&](const std::string& name, void (*draw)(QGraphicsScene&, const QRectF&)) {
        if (!name.empty()) side.add_sample(QString::fromStdString(name), draw);
    };
    sample(chart.range_name, draw_range);
    sample(chart.weak_name, draw_weak);
    sample(chart.mark_name, draw_mark);
    sample(chart.amount_name, draw_amount);
    if (!chart.amount_mark_name.empty()) side.add_mark(QString::fromStdString(chart.amount_mark_name), amount_mark());
    const bool misses = std::ranges::any_of(chart.panels, [](const RowPanel& panel) {
        return std::ranges::any_of(panel.bars, [](const RowBar& bar) { return !bar.range; });
    });
    if (misses) side.add_mark(QString::fromStdString(chart.missing_name), missing_mark());
    side.add_space(8.0);
    for (const std::string& warning : chart.warnings) side.add_note(warning, warning_text);
    for (const std::string& note : chart.notes) side.add_note(note);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const RowsChart& chart) {
    Sheet sheet = make_sheet({.title = chart.title, .subtitle = chart.subtitle, .warning = ""});
    const double top = sheet.content_top + title_room;
    const QRectF plots(QPointF(names_right, top), QPointF(style::plot_right, style::sheet_height - foot_room));
    const double count = static_cast<double>(std::max<std::size_t>(chart.panels.size(), 1));
    const double width = (plots.width() - (count - 1.0) * panel_gap) / count;
    for (std::size_t k = 0; k < chart.panels.size(); ++k)
        add_panel(chart.panels[k],
                  QRectF(plots.left() + static_cast<double>(k) * (width + panel_gap), top, width, plots.height()),
                  *sheet.scene);
    add_names(chart, plots, *sheet.scene);
    SideColumn side(*sheet.scene, top);
    add_legend(chart, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
