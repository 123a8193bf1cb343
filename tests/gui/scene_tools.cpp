// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/gui/scene_tools.hpp"

#include <QChart>
#include <QGraphicsScene>
#include <QGraphicsSimpleTextItem>
#include <QPainter>

#include <algorithm>
#include <utility>

namespace tests {

std::vector<QGraphicsSimpleTextItem*> texts(const QGraphicsScene& scene) {
    std::vector<QGraphicsSimpleTextItem*> found;
    for (QGraphicsItem* item : scene.items())
        if (auto* text = dynamic_cast<QGraphicsSimpleTextItem*>(item)) found.push_back(text);
    return found;
}

std::vector<QChart*> plots(const QGraphicsScene& scene) {
    std::vector<QChart*> found;
    for (QGraphicsItem* item : scene.items())
        if (auto* chart = dynamic_cast<QChart*>(item)) found.push_back(chart);
    std::sort(found.begin(), found.end(), [](auto* a, auto* b) {
        const QPointF p = a->plotArea().topLeft();
        const QPointF q = b->plotArea().topLeft();
        return std::pair(p.y(), p.x()) < std::pair(q.y(), q.x());
    });
    return found;
}

bool says(const QGraphicsScene& scene, const QString& part) {
    QString all;
    auto items = texts(scene);
    std::sort(items.begin(), items.end(), [](auto* a, auto* b) { return a->scenePos().y() < b->scenePos().y(); });
    for (const auto* text : items) all += text->text() + " ";
    return all.replace(QChar(QChar::Nbsp), ' ').contains(part);
}

QImage picture(QGraphicsScene& scene) {
    QImage image(1200, 800, QImage::Format_Grayscale8);
    image.fill(Qt::white);
    QPainter painter(&image);
    scene.render(&painter);
    return image;
}

}  // namespace tests
