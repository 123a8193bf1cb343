// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/series_look.hpp"

#include "gui/charts/panel.hpp"
#include "gui/charts/style.hpp"

#include <array>
#include <cmath>

namespace gui::charts {

MarkStyle missing_mark(const QColor& colour) {
    return {.shape = MarkShape::cross, .colour = colour, .size = 13.0, .layer = style::top_mark_layer};
}

SeriesLook series_look(std::size_t index) {
    static const std::array<QColor, 6> colours{style::blue,   style::red, style::green,
                                               style::purple, style::ink, style::orange};
    static const std::array<QList<qreal>, 5> dashes{{{}, {6, 3}, {2, 2}, {8, 2, 2, 2}, {12, 4}}};
    static const std::array<MarkShape, 7> shapes{
        MarkShape::disc,         MarkShape::open_square,        MarkShape::triangle,
        MarkShape::open_diamond, MarkShape::open_triangle_down, MarkShape::ring,
        MarkShape::square};
    const QColor colour = colours[index % colours.size()];
    return {
        .pen = style::pen(colour, 2.2, dashes[index % dashes.size()]),
        .mark = {
            .shape = shapes[index % shapes.size()], .colour = colour, .size = 11.0, .layer = style::top_mark_layer}};
}

bool has_value(const SweepPoint& point) { return point.y && std::isfinite(*point.y); }

void draw_broken_line(const BrokenLine& line, Panel& panel, QGraphicsScene& scene) {
    Polyline run;
    Polyline all;
    QList<QPointF> missing;
    for (const SweepPoint& point : line.points) {
        if (has_value(point)) {
            run.push_back({point.x, *point.y});
            all.push_back(run.back());
            continue;
        }
        if (panel.x().shows(point.x)) missing.append(QPointF(panel.x_at(point.x), line.foot));
        panel.add_line(run, {.pen = line.look.pen, .halo = true});
        run.clear();
    }
    panel.add_line(run, {.pen = line.look.pen, .halo = true});
    if (line.with_markers) panel.add_marks(all, line.look.mark);
    add_marks(scene, missing, missing_mark(line.look.mark.colour));
}

}  // namespace gui::charts
