// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/text.hpp"

#include <QFontMetricsF>
#include <QGraphicsScene>
#include <QGraphicsSimpleTextItem>
#include <QRegularExpression>
#include <QTextLayout>

namespace gui::charts {
namespace {

QPointF corner(const QRectF& size, QPointF place, Hold hold) {
    const QPointF middle = size.center();
    switch (hold) {
        case Hold::left_top:
            return place;
        case Hold::left_middle:
            return place - QPointF(0, middle.y());
        case Hold::centre_top:
            return place - QPointF(middle.x(), 0);
        case Hold::centre_bottom:
            return place - QPointF(middle.x(), size.height());
        case Hold::right_middle:
            return place - QPointF(size.width(), middle.y());
    }
    return place;
}

/// A number stays with its unit.
QString with_units_kept(QString text) {
    for (const char* unit : {"mm", "N", "dB", "%", "Hz", "cents", "semitones", "m/s"})
        text.replace(QRegularExpression(QStringLiteral("(\\d) (?=%1(\\W|$))").arg(QLatin1String(unit))),
                     QStringLiteral("\\1") + QChar(QChar::Nbsp));
    return text;
}

}  // namespace

QFont font(const TextStyle& text) {
    QFont result("DejaVu Sans");
    result.setStyleHint(QFont::SansSerif);
    result.setPixelSize(text.pixels);
    result.setBold(text.bold);
    result.setHintingPreference(QFont::PreferNoHinting);  // same widths in every file format
    return result;
}

double text_width(const QString& text, const TextStyle& style) {
    return QFontMetricsF(font(style)).horizontalAdvance(text);
}

double line_height(const TextStyle& style) { return QFontMetricsF(font(style)).height(); }

QStringList wrapped(const QString& text, double width, const TextStyle& style, int most_lines) {
    QTextLayout layout(with_units_kept(text.simplified()), font(style));
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    layout.setTextOption(option);
    QStringList lines;
    layout.beginLayout();
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        line.setLineWidth(width);
        if (lines.size() + 1 == most_lines) {
            const QString rest = layout.text().mid(line.textStart());
            lines.append(QFontMetricsF(font(style)).elidedText(rest, Qt::ElideRight, width));
            break;
        }
        lines.append(layout.text().mid(line.textStart(), line.textLength()).trimmed());
    }
    layout.endLayout();
    return lines;
}

QGraphicsSimpleTextItem* add_text(QGraphicsScene& scene, const QString& text, QPointF place, Hold hold,
                                  const TextStyle& style) {
    QGraphicsSimpleTextItem* item = scene.addSimpleText(text, font(style));
    item->setBrush(style.colour);
    item->setPos(corner(item->boundingRect(), place, hold));
    item->setZValue(style::frame_layer);
    return item;
}

QGraphicsSimpleTextItem* add_upright_text(QGraphicsScene& scene, const QString& text, QPointF middle,
                                          const TextStyle& style) {
    QGraphicsSimpleTextItem* item = add_text(scene, text, {0, 0}, Hold::left_top, style);
    const QRectF size = item->boundingRect();
    item->setRotation(-90);
    item->setPos(middle + QPointF(-size.height() / 2.0, size.width() / 2.0));
    return item;
}

}  // namespace gui::charts
