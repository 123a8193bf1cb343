// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QBrush>
#include <QPen>
#include <QRectF>
#include <QString>

#include <vector>

class QGraphicsScene;

namespace gui::charts {

/// One line of explanation: a sample as drawn in the plot, and its name.
struct LegendEntry {
    enum class Kind { line, symbol, strip } kind = Kind::line;
    QString name;
    QPen pen;
    QBrush brush;
    int shape = 0;        ///< QScatterSeries::MarkerShape, for symbols
    double size = 9.0;
};

/// Height that the entries take in rows of this width; names are never cut.
double legend_height(const std::vector<LegendEntry>& entries, double width);
/// Draws them in rows, from the top of `place` on, each row centred.
void draw_legend(const std::vector<LegendEntry>& entries, const QRectF& place, QGraphicsScene& scene);

}  // namespace gui::charts
