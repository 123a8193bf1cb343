// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QImage>
#include <QString>

#include <vector>

class QChart;
class QGraphicsScene;
class QGraphicsSimpleTextItem;

/// What tests ask of a drawn chart.
namespace tests {

std::vector<QGraphicsSimpleTextItem*> texts(const QGraphicsScene& scene);
/// From the top down, then from the left.
std::vector<QChart*> plots(const QGraphicsScene& scene);
/// Do the texts, read from the top down, hold these words?
bool says(const QGraphicsScene& scene, const QString& part);
/// 1200 x 800, in grey.
QImage picture(QGraphicsScene& scene);

}  // namespace tests
