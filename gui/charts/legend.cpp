// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/legend.hpp"

#include <QFont>
#include <QFontMetricsF>
#include <QGraphicsEllipseItem>
#include <QGraphicsLineItem>
#include <QGraphicsPolygonItem>
#include <QGraphicsRectItem>
#include <QGraphicsScene>
#include <QGraphicsSimpleTextItem>
#include <QScatterSeries>

#include <cmath>
#include <numbers>

namespace gui::charts {

namespace {

constexpr double row_height = 23.0;
constexpr double sample_width = 30.0;
constexpr double gap = 18.0;

QFont legend_font() { return {QStringLiteral("DejaVu Sans"), 10}; }

double entry_width(const LegendEntry& entry) {
    return sample_width + 6.0 + QFontMetricsF(legend_font()).horizontalAdvance(entry.name) + gap;
}

struct Row {
    std::vector<const LegendEntry*> entries;
    double width = 0.0;
};

std::vector<Row> rows_of(const std::vector<LegendEntry>& entries, double width) {
    std::vector<Row> rows;
    for (const LegendEntry& entry : entries) {
        const double needed = entry_width(entry);
        if (rows.empty() || rows.back().width + needed > width) rows.emplace_back();
        rows.back().entries.push_back(&entry);
        rows.back().width += needed;
    }
    return rows;
}

/// Corners of a regular figure, every `turn`-th joined to the centre's inner ring for a star.
QPolygonF figure(QPointF centre, double radius, int corners, double inner) {
    QPolygonF polygon;
    const int count = inner < 1.0 ? 2 * corners : corners;
    for (int i = 0; i < count; ++i) {
        const double angle = -std::numbers::pi / 2.0 + 2.0 * std::numbers::pi * i / count;
        const double r = inner < 1.0 && i % 2 == 1 ? inner * radius : radius;
        polygon << centre + QPointF(r * std::cos(angle), r * std::sin(angle));
    }
    return polygon;
}

void draw_symbol(const LegendEntry& entry, QPointF centre, QGraphicsScene& scene) {
    const double r = entry.size / 2.0;
    const QRectF box(centre.x() - r, centre.y() - r, 2.0 * r, 2.0 * r);
    switch (entry.shape) {
        case QScatterSeries::MarkerShapeCircle: scene.addEllipse(box, entry.pen, entry.brush); return;
        case QScatterSeries::MarkerShapeRectangle: scene.addRect(box, entry.pen, entry.brush); return;
        case QScatterSeries::MarkerShapeRotatedRectangle:
            scene.addPolygon(figure(centre, r, 4, 1.0), entry.pen, entry.brush);
            return;
        case QScatterSeries::MarkerShapeTriangle:
            scene.addPolygon(figure(centre, r * 1.15, 3, 1.0), entry.pen, entry.brush);
            return;
        case QScatterSeries::MarkerShapeStar:
            scene.addPolygon(figure(centre, r, 5, 0.45), entry.pen, entry.brush);
            return;
        default: scene.addPolygon(figure(centre, r, 5, 1.0), entry.pen, entry.brush); return;
    }
}

void draw_entry(const LegendEntry& entry, QPointF left, QGraphicsScene& scene) {
    const double middle = left.y() + row_height / 2.0;
    const QPointF end = left + QPointF(sample_width, 0.0);
    if (entry.kind == LegendEntry::Kind::line) scene.addLine(left.x(), middle, end.x(), middle, entry.pen);
    if (entry.kind == LegendEntry::Kind::strip)
        scene.addRect(left.x() + 4.0, middle - 7.0, sample_width - 6.0, 14.0, entry.pen, entry.brush);
    if (entry.kind == LegendEntry::Kind::symbol) draw_symbol(entry, {left.x() + sample_width / 2.0, middle}, scene);
    auto* text = scene.addSimpleText(entry.name, legend_font());
    text->setPos(end.x() + 6.0, middle - text->boundingRect().height() / 2.0);
}

}  // namespace

double legend_height(const std::vector<LegendEntry>& entries, double width) {
    return row_height * static_cast<double>(rows_of(entries, width).size()) + 6.0;
}

void draw_legend(const std::vector<LegendEntry>& entries, const QRectF& place, QGraphicsScene& scene) {
    double y = place.top();
    for (const Row& row : rows_of(entries, place.width())) {
        double x = place.center().x() - (row.width - gap) / 2.0;
        for (const LegendEntry* entry : row.entries) {
            draw_entry(*entry, {x, y}, scene);
            x += entry_width(*entry);
        }
        y += row_height;
    }
}

}  // namespace gui::charts
