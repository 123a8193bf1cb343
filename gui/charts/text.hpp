// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/style.hpp"

#include <QFont>
#include <QPointF>
#include <QString>
#include <QStringList>

class QGraphicsScene;
class QGraphicsSimpleTextItem;

namespace gui::charts {

struct TextStyle {
    int pixels = style::text_px;
    bool bold = false;
    QColor colour = style::ink;
};

/// Where in its rectangle a text is held by the given point.
enum class Hold { left_top, left_middle, centre_top, centre_bottom, right_middle };

QFont font(const TextStyle& text);
double text_width(const QString& text, const TextStyle& style);
double line_height(const TextStyle& style);

/// Lines no wider than `width`, broken at spaces, or anywhere where a word is too long; with at most `most_lines`,
/// the last of which then ends in an ellipsis.
QStringList wrapped(const QString& text, double width, const TextStyle& style, int most_lines);

QGraphicsSimpleTextItem* add_text(QGraphicsScene& scene, const QString& text, QPointF place, Hold hold,
                                  const TextStyle& style = {});
/// Turned to read upwards, its middle at `middle`.
QGraphicsSimpleTextItem* add_upright_text(QGraphicsScene& scene, const QString& text, QPointF middle,
                                          const TextStyle& style = {});

}  // namespace gui::charts
