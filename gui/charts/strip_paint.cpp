// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/strip_paint.hpp"

#include "gui/charts/style.hpp"
#include "gui/charts/text.hpp"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace gui::charts::strip {
namespace {

constexpr double ticks = 6.0 * unit;          // height of the ruler's edge
constexpr double marks_height = 27.0 * unit;  // of what marks cross
constexpr double widest_row = 4.6 * unit;
constexpr double all_rows = 124.0 * unit;  // what a sheet of Letter or A4 has room for
constexpr double row_names = 1.0 * unit;   // where rows are named, right of the zero edge

constexpr TextStyle title_style{.pixels = 44, .bold = true, .colour = style::ink};
constexpr TextStyle line_style{.pixels = 27, .bold = false, .colour = style::ink};
constexpr TextStyle small_style{.pixels = 22, .bold = false, .colour = style::ink};
constexpr TextStyle bold_small_style{.pixels = 24, .bold = true, .colour = style::ink};

QPen thin(const QColor& colour = style::ink) { return style::pen(colour, 1.2); }

double row_height(const Strip& strip) {
    return std::min(widest_row, all_rows / static_cast<double>(strip.rows.size()));
}

/// Text whose line begins at `place`, half its height over and under it.
void put_text(QPainter& painter, QPointF place, const QString& text, const TextStyle& style) {
    const QFontMetricsF metrics(font(style));
    painter.setFont(font(style));
    painter.setPen(style.colour);
    painter.drawText(place + QPointF(0, 0.5 * (metrics.ascent() - metrics.descent())), text);
}

/// Reading upwards from `foot`, its middle line there.
void put_upright(QPainter& painter, QPointF foot, const QString& text, const TextStyle& style) {
    painter.save();
    painter.translate(foot);
    painter.rotate(-90.0);
    put_text(painter, {0, 0}, text, style);
    painter.restore();
}

/// Millimetres along an edge, the tens numbered.
void paint_ticks(QPainter& painter, double length_mm, double y, double down) {
    for (int mm = 0; mm <= static_cast<int>(std::floor(length_mm)); ++mm) {
        const double size = mm % 10 == 0 ? 3.4 : mm % 5 == 0 ? 2.4 : 1.5;
        painter.setPen(thin());
        painter.drawLine(QPointF(mm * unit, y), QPointF(mm * unit, y + down * size * unit));
        if (mm % 10 == 0 && mm > 0)
            put_text(painter, {mm * unit + 3.0, y + down * 4.4 * unit}, QString::number(mm), small_style);
    }
}

QPen pen_of(StripMark::Kind kind) {
    switch (kind) {
        case StripMark::Kind::fret:
            return style::pen(style::ink, 4.0);
        case StripMark::Kind::landmark:
            return style::pen(style::red, 4.0, {6.0, 3.0});
        case StripMark::Kind::finger:
            return style::pen(style::blue, 1.6);
    }
    return {};
}

void paint_mark(QPainter& painter, const StripMark& mark) {
    const double x = mark.at_mm * unit;
    painter.setPen(pen_of(mark.kind));
    painter.drawLine(QPointF(x, ticks), QPointF(x, ticks + marks_height));
    const double foot = ticks + marks_height - 5.0;
    const double beside = x - 15.0;  // on the nut's side, where there is more room than towards the bridge
    const QString name = QString::fromStdString(mark.name);
    put_upright(painter, {beside, foot}, name, bold_small_style);
    put_upright(painter, {beside, foot - text_width(name + "  ", bold_small_style)}, QString::fromStdString(mark.label),
                small_style);
}

void paint_bar(QPainter& painter, const StripBar& of, double y, double bar) {
    const QRectF box(QPointF(of.from_mm * unit, y), QPointF(of.to_mm * unit, y + bar));
    painter.setPen(
        style::pen(of.weak ? style::soft_ink : style::blue, 2.0, of.weak ? QList<qreal>{5.0, 4.0} : QList<qreal>{}));
    painter.setBrush(of.weak ? QBrush(Qt::NoBrush) : QBrush(style::pale_blue));
    painter.drawRect(box);
    if (of.best_mm) {
        painter.setPen(style::pen(style::ink, 5.0));
        painter.drawLine(QPointF(*of.best_mm * unit, y - 4.0), QPointF(*of.best_mm * unit, y + bar + 4.0));
    }
    const double middle = y + bar / 2.0;
    put_text(painter, {row_names, middle}, QString::fromStdString(of.name), bold_small_style);
    const double behind =
        std::max(box.right(), row_names + text_width(QString::fromStdString(of.name), bold_small_style));
    put_text(painter, {behind + 15.0, middle}, QString::fromStdString(of.label), small_style);
}

void paint_rows(QPainter& painter, const Strip& strip, double height) {
    painter.setPen(thin(style::grid));
    for (int mm = 10; mm <= static_cast<int>(strip.length_mm); mm += 10)
        painter.drawLine(QPointF(mm * unit, ticks), QPointF(mm * unit, height - ticks));
    const double row = row_height(strip);
    const double bar = 0.65 * row;
    double y = ticks + 0.5 * (row - bar) + unit;
    for (const StripBar& of : strip.rows) {
        paint_bar(painter, of, y, bar);
        y += row;
    }
}

}  // namespace

double body_height(const Strip& strip) {
    if (strip.rows.empty()) return ticks + marks_height;
    return 2.0 * (ticks + unit) + row_height(strip) * static_cast<double>(strip.rows.size());
}

void paint_head(QPainter& painter, const Strip& strip, const QString& sheet) {
    QString title = QString::fromStdString(strip.title);
    if (!sheet.isEmpty()) title += " — " + sheet;
    put_text(painter, {0, 25.0}, title, title_style);
    double y = 70.0;
    for (const std::string& line : strip.lines) {
        put_text(painter, {0, y}, QString::fromStdString(line), line_style);
        y += 36.0;
    }
}

void paint_body(QPainter& painter, const Strip& strip) {
    const double height = body_height(strip);
    const double length = strip.length_mm * unit;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(thin(style::grey));
    painter.drawRect(QRectF(0, 0, length, height));
    if (!strip.rows.empty()) paint_rows(painter, strip, height);
    paint_ticks(painter, strip.length_mm, 0.0, 1.0);
    if (!strip.rows.empty()) paint_ticks(painter, strip.length_mm, height, -1.0);
    for (const StripMark& mark : strip.marks) paint_mark(painter, mark);
    painter.setPen(style::pen(style::ink, 6.0));
    painter.drawLine(QPointF(0, 0), QPointF(0, height));
    put_upright(painter, {-22.0, height}, QString::fromStdString(strip.zero), bold_small_style);
}

void paint_check(QPainter& painter) {
    const double y = 30.0;
    painter.setPen(style::pen(style::ink, 3.0));
    painter.drawLine(QPointF(0, y), QPointF(check, y));
    for (const double x : {0.0, check}) painter.drawLine(QPointF(x, y - 20.0), QPointF(x, y + 20.0));
    put_text(painter, {0, y + 55.0},
             "Measure this line: it must be 100 mm long. Print at 100 % (\"actual size\"), not fitted to the page.",
             line_style);
}

void paint_joint(QPainter& painter, const Joint& of) {
    painter.setPen(style::pen(style::soft_ink, 2.0, of.cut ? QList<qreal>{} : QList<qreal>{10.0, 6.0}));
    painter.drawLine(QPointF(of.x, -25.0), QPointF(of.x, of.height + 25.0));
    const QString text = of.cut ? "cut along " + of.name : "lay the edge cut along " + of.name + " here";
    const double width = text_width(text, small_style);
    put_text(painter, {of.cut ? of.x + 8.0 : of.x - width - 8.0, -22.0}, text, small_style);
}

}  // namespace gui::charts::strip
