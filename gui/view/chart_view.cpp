// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/chart_view.hpp"

#include "gui/view/dress.hpp"

#include <QEvent>
#include <QGraphicsScene>
#include <QPainter>
#include <QPrinter>

namespace gui {
namespace {

constexpr int settle_ms = 120;

}  // namespace

ChartView::ChartView(QWidget* parent) : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    scene_timer_.setSingleShot(true);
    scene_timer_.setInterval(settle_ms);
    paint_timer_.setSingleShot(true);
    paint_timer_.setInterval(0);
    connect(&scene_timer_, &QTimer::timeout, this, &ChartView::make_scene);
    connect(&paint_timer_, &QTimer::timeout, this, &ChartView::paint_scene);
}

ChartView::~ChartView() = default;

void ChartView::set_chart(charts::Chart chart, const QString& words) {
    setAccessibleDescription(words);
    if (chart_ == chart) return;
    chart_ = std::move(chart);
    scene_.reset();
    draw_later();
}

void ChartView::draw_later() {
    stale_ = true;
    if (chart_ && isVisible()) scene_timer_.start();
}

void ChartView::make_scene() {
    if (!scene_) scene_ = charts::chart_scene(*chart_);
    paint_timer_.start();
}

void ChartView::paint_scene() {
    const double ratio = devicePixelRatioF();
    const QRectF paper = scene_->sceneRect();
    const QSize room = paper.size().toSize().scaled(size() * ratio, Qt::KeepAspectRatio);
    picture_ = QImage(room, QImage::Format_RGB32);
    picture_.fill(Qt::white);
    QPainter painter(&picture_);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    scene_->render(&painter, QRectF(QPointF(), room), paper);
    painter.end();
    if (const Dress dress = dress_of(palette()); dress.dark) darken(picture_, dress.paper);
    picture_.setDevicePixelRatio(ratio);
    stale_ = false;
    update();
}

void ChartView::print(QPrinter& printer) const {
    const auto scene = charts::chart_scene(*chart_);
    QPainter painter(&printer);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    scene->render(&painter, QRectF(painter.viewport()), scene->sceneRect());
}

void ChartView::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.fillRect(rect(), dress_of(palette()).paper);
    if (picture_.isNull()) return;
    const QSizeF shown = picture_.deviceIndependentSize().scaled(size(), Qt::KeepAspectRatio);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.drawImage(QRectF(QPointF((width() - shown.width()) / 2.0, 0.0), shown), picture_);
    if (hasFocus()) {
        painter.setPen(QPen(dress_of(palette()).band, 2.0));
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
}

void ChartView::resizeEvent(QResizeEvent* /*event*/) { draw_later(); }
void ChartView::showEvent(QShowEvent* /*event*/) {
    if (stale_) draw_later();
}

void ChartView::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange) draw_later();
    QWidget::changeEvent(event);
}

}  // namespace gui
