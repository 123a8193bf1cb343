// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/start_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/sheet.hpp"

#include <QGraphicsPathItem>
#include <QGraphicsRectItem>
#include <QPainterPath>

#include <algorithm>
#include <array>
#include <cmath>

namespace gui::charts {
namespace {

struct StepLook {
    MarkShape shape;
    QColor colour;
    QColor tint;
};

const StepLook& look_of(StartStep step) {
    static const QColor deep_tint{0x6f, 0x9f, 0xcc};
    static const std::array<StepLook, start_step_count> looks{{
        {MarkShape::square, style::blue, deep_tint},
        {MarkShape::disc, style::blue, style::mid_blue},
        {MarkShape::half_disc, style::blue, style::pale_blue},
        {MarkShape::ring, style::blue, style::faint_grey},
        {MarkShape::triangle, style::orange, Qt::white},
        {MarkShape::cross, style::red, Qt::white},
        {MarkShape::open_diamond, style::green, Qt::white},
        {MarkShape::dot, style::soft_ink, Qt::white},
    }};
    return looks[static_cast<std::size_t>(step)];
}

QString step_words(StartStep step, const StartChart& chart) {
    const auto ms = [](double value) { return QString::fromStdString(number_text(value)); };
    switch (step) {
        case StartStep::quick:
            return QStringLiteral("settled within %1 ms").arg(ms(0.5 * chart.strict_ms));
        case StartStep::strict:
            return QStringLiteral("within %1 ms (strict)").arg(ms(chart.strict_ms));
        case StartStep::lenient:
            return QStringLiteral("within %1 ms (lenient)").arg(ms(chart.lenient_ms));
        case StartStep::late:
            return "settles later";
        case StartStep::slipping:
            return "slips too often: too little force";
        case StartStep::choked:
            return "slips too seldom: too much force";
        case StartStep::wrong_motion:
            return "S-motion";
        case StartStep::stuck:
            break;
    }
    return "no slip";
}

const QPen strict_pen = style::pen(style::ink, 2.6);
const QPen lenient_pen = style::pen(style::purple, 2.2, {4, 2});
const QPen force_pen = style::pen(style::ink, 1.3, {7, 4});
const QPen pace_pen = style::pen(style::ink, 1.3, {2, 3});
constexpr double bracket_width = 7.0;
constexpr double best_size = 16.0;

MarkStyle unsure_mark(double size) {
    return {.shape = MarkShape::open_square, .colour = style::ink, .size = size, .layer = style::top_mark_layer};
}
MarkStyle best_mark() {
    return {.shape = MarkShape::diamond, .colour = style::ink, .size = best_size, .layer = style::top_mark_layer};
}

bool rises(const std::vector<double>& values) {
    if (values.size() < 2 || !(values.front() > 0.0) || !std::isfinite(values.back())) return false;
    return std::adjacent_find(values.begin(), values.end(), [](double a, double b) { return !(a < b); }) ==
           values.end();
}

bool has_cells(const StartChart& chart) {
    return rises(chart.paces) && rises(chart.forces) && chart.cells.size() == chart.paces.size() * chart.forces.size();
}

/// Borders of the cells: half a step in ratio to either side; one more than values.
std::vector<double> borders(const std::vector<double>& values) {
    std::vector<double> result{values[0] * std::sqrt(values[0] / values[1])};
    for (std::size_t i = 1; i < values.size(); ++i) result.push_back(std::sqrt(values[i - 1] * values[i]));
    const std::size_t last = values.size() - 1;
    result.push_back(values[last] * std::sqrt(values[last] / values[last - 1]));
    return result;
}

struct Grid {
    std::vector<double> x;  ///< px, borders of the columns
    std::vector<double> y;
};

Grid grid_of(const StartChart& chart, const Panel& panel) {
    Grid grid;
    for (const double pace : borders(chart.paces)) grid.x.push_back(panel.x_at(pace));
    for (const double force : borders(chart.forces)) grid.y.push_back(panel.y_at(force));
    return grid;
}

double cell_room(const Grid& grid) { return std::min(grid.x[1] - grid.x[0], grid.y[0] - grid.y[1]); }

void draw_cells(const StartChart& chart, const Grid& grid, Panel& panel, QGraphicsScene& scene) {
    std::array<Polyline, start_step_count> places;
    Polyline unsure;
    for (std::size_t i = 0; i < chart.cells.size(); ++i) {
        const std::size_t column = i / chart.forces.size();
        const std::size_t row = i % chart.forces.size();
        const StartChartCell& cell = chart.cells[i];
        places[static_cast<std::size_t>(cell.step)].push_back({chart.paces[column], chart.forces[row]});
        if (cell.unsure) unsure.push_back({chart.paces[column], chart.forces[row]});
        const QRectF box(QPointF(grid.x[column], grid.y[row + 1]), QPointF(grid.x[column + 1], grid.y[row]));
        scene.addRect(box, Qt::NoPen, look_of(cell.step).tint)->setZValue(style::tint_layer);
    }
    const double size = std::clamp(0.5 * cell_room(grid), 3.5, 13.0);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const StepLook& look = look_of(static_cast<StartStep>(i));
        panel.add_marks(places[i],
                        {.shape = look.shape, .colour = look.colour, .size = size, .layer = style::mark_layer});
    }
    panel.add_marks(unsure, unsure_mark(std::clamp(0.86 * cell_room(grid), 6.0, 22.0)));
}

/// The outline, along the cells' borders, of all cells that are clean under a limit.
QPainterPath outline(const StartChart& chart, const Grid& grid, bool StartChartCell::*limit) {
    const auto columns = static_cast<int>(chart.paces.size());
    const auto rows = static_cast<int>(chart.forces.size());
    const auto clean = [&](int column, int row) {
        if (column < 0 || row < 0 || column >= columns || row >= rows) return false;
        return chart.cells[static_cast<std::size_t>(column * rows + row)].*limit;
    };
    const auto at = [&](int column, int row) {
        return QPointF(grid.x[static_cast<std::size_t>(column)], grid.y[static_cast<std::size_t>(row)]);
    };
    QPainterPath path;
    const auto add_run = [&](QPointF from, QPointF to) {
        if (path.currentPosition() != from || path.isEmpty()) path.moveTo(from);
        path.lineTo(to);
    };
    for (int column = 0; column <= columns; ++column)
        for (int row = 0; row < rows; ++row)
            if (clean(column - 1, row) != clean(column, row)) add_run(at(column, row), at(column, row + 1));
    for (int row = 0; row <= rows; ++row)
        for (int column = 0; column < columns; ++column)
            if (clean(column, row - 1) != clean(column, row)) add_run(at(column, row), at(column + 1, row));
    return path;
}

void draw_outline(const QPainterPath& path, const QPen& pen, QGraphicsScene& scene) {
    scene.addPath(path, style::pen(Qt::white, pen.widthF() + 2.5))->setZValue(style::line_layer);
    scene.addPath(path, pen)->setZValue(style::line_layer);
}

void draw_player(const StartChart& chart, Panel& panel, QGraphicsScene& scene) {
    if (chart.player_pace) panel.add_upright_line(*chart.player_pace, pace_pen);
    if (!chart.player_force) return;
    const auto [low, high] = *chart.player_force;
    panel.add_level_line(low, force_pen);
    panel.add_level_line(high, force_pen);
    const double bottom = std::max(low, panel.y().low);
    const double top = std::min(high, panel.y().high);
    if (!(bottom > 0.0) || !(bottom < top)) return;
    const QRectF bar(QPointF(panel.plot().right() + 4, panel.y_at(top)),
                     QPointF(panel.plot().right() + 4 + bracket_width, panel.y_at(bottom)));
    scene.addRect(bar, Qt::NoPen, style::ink);
}

void add_legend(const StartChart& chart, SideColumn& side) {
    side.add_heading("one beginning each");
    for (std::size_t i = 0; i < start_step_count; ++i) {
        const auto step = static_cast<StartStep>(i);
        if (std::ranges::none_of(chart.cells, [&](const StartChartCell& cell) { return cell.step == step; })) continue;
        const StepLook& look = look_of(step);
        side.add_sample(step_words(step, chart), [&](QGraphicsScene& scene, const QRectF& place) {
            scene.addRect(place, style::pen(style::grid, 1.0), look.tint)->setZValue(style::tint_layer);
            add_marks(scene, {place.center()}, {.shape = look.shape, .colour = look.colour, .size = 12.0});
        });
    }
    if (std::ranges::any_of(chart.cells, &StartChartCell::unsure))
        side.add_mark("unsure: 1 % off it ends otherwise", unsure_mark(14.0));
    side.add_space(6.0);
    side.add_heading("lines");
    if (!chart.cells.empty()) {
        side.add_line("clean by vote, strict limit", strict_pen);
        side.add_line("clean by vote, lenient limit", lenient_pen);
    }
    if (chart.player_force) side.add_line("player's range of force", force_pen);
    if (chart.player_pace) side.add_line("player's own pace", pace_pen);
    if (chart.best_pace && chart.middle_force) side.add_mark("best pace at the middle force", best_mark());
    side.add_space(6.0);
    for (const std::string& note : chart.notes) side.add_note(note);
}

struct Scales {
    Scale pace;
    Scale force;
};
Scales scales_of(const StartChart& chart) {
    Extent pace(true);
    Extent force(true);
    if (!chart.cells.empty()) {
        for (const double border : borders(chart.paces)) pace.add(border);
        for (const double border : borders(chart.forces)) force.add(border);
    }
    return {pace.scale(0.01), force.scale(0.01)};
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const StartChart& asked) {
    StartChart chart = asked;
    if (!has_cells(chart)) chart.cells.clear();
    Sheet sheet = make_sheet({.title = chart.title, .subtitle = chart.subtitle, .warning = chart.warning});
    const double top = sheet.content_top + 12.0;
    const QRectF plot(QPointF(style::plot_left, top), QPointF(style::plot_right, style::sheet_height - 58.0));
    const Scales scales = scales_of(chart);
    Panel panel(*sheet.scene, plot, scales.pace, scales.force);
    panel.add_x_axis(QString::fromStdString(chart.pace_title));
    panel.add_y_axis("bow force, N");
    if (!chart.cells.empty()) {
        const Grid grid = grid_of(chart, panel);
        draw_cells(chart, grid, panel, *sheet.scene);
        draw_outline(outline(chart, grid, &StartChartCell::lenient), lenient_pen, *sheet.scene);
        draw_outline(outline(chart, grid, &StartChartCell::strict), strict_pen, *sheet.scene);
        if (chart.best_pace && chart.middle_force)
            panel.add_marks({{*chart.best_pace, *chart.middle_force}}, best_mark());
    }
    draw_player(chart, panel, *sheet.scene);
    SideColumn side(*sheet.scene, top);
    add_legend(chart, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
