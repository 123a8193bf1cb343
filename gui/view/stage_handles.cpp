// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/stage_handles.hpp"

#include "gui/view/dress.hpp"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

namespace gui {

StageHandle::StageHandle(QWidget* parent) : QAbstractSlider(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::OpenHandCursor);
    setMouseTracking(false);
}

bool StageHandle::event(QEvent* event) {
    if (event->type() == QEvent::Wheel) return false;  // places are not for the wheel
    return QAbstractSlider::event(event);
}

void StageHandle::mousePressEvent(QMouseEvent* event) {
    hold_ = event->position() - QPointF(rect().center());
    setFocus(Qt::MouseFocusReason);
    setCursor(Qt::ClosedHandCursor);
}

void StageHandle::mouseMoveEvent(QMouseEvent* event) {
    if (event->buttons() & Qt::LeftButton) emit dragged(mapToParent(event->position()) - hold_);
}

void StageHandle::mouseReleaseEvent(QMouseEvent* /*event*/) { setCursor(Qt::OpenHandCursor); }

void StageHandle::keyPressEvent(QKeyEvent* event) {
    const int key = event->key();
    if (has_force_ && (key == Qt::Key_Up || key == Qt::Key_Down))
        emit pressed_harder(key == Qt::Key_Up ? 1 : -1);
    else
        QAbstractSlider::keyPressEvent(event);
}

void StageHandle::focusInEvent(QFocusEvent* event) {
    QAbstractSlider::focusInEvent(event);
    update();
}

void StageHandle::focusOutEvent(QFocusEvent* event) {
    QAbstractSlider::focusOutEvent(event);
    update();
}

FingerHandle::FingerHandle(QWidget* parent) : StageHandle(parent) {
    setAccessibleName(tr("Finger"));
    setToolTip(
        tr("Finger: drag it along the string, or use the arrow keys. Where it stops the string makes the note."));
}

void FingerHandle::paintEvent(QPaintEvent* /*event*/) {
    const Dress dress = dress_of(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF tip = QRectF(rect()).adjusted(2, 2, -2, -2);
    QColor skin = dress.finger;
    skin.setAlpha(200);
    painter.setBrush(skin);
    painter.setPen(QPen(dress.ink, hasFocus() ? 3.0 : 1.2));
    const double round = tip.width() / 2.0;
    painter.drawRoundedRect(tip, round, round);
    painter.setPen(QPen(dress.paper, 1.5));
    const QRectF nail(tip.center().x() - tip.width() * 0.25, tip.top() + tip.height() * 0.08, tip.width() * 0.5,
                      tip.height() * 0.22);
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(nail, round / 2.0, round / 2.0);
}

BowHandle::BowHandle(QWidget* parent) : StageHandle(parent) {
    has_force_ = true;
    setAccessibleName(tr("Bow"));
    setToolTip(
        tr("Bow: drag it along the string to change the contact point, up for more force and down for less. Left and "
           "right keys move it, up and down keys change the force."));
}

void BowHandle::set_look(double hair_pixels, double force_share) {
    hair_pixels_ = hair_pixels;
    force_share_ = force_share;
    update();
}

void BowHandle::paintEvent(QPaintEvent* /*event*/) {
    const Dress dress = dress_of(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QPointF middle = QRectF(rect()).center();
    const double stick = 3.0;
    const double top = 4.0;
    const double bottom = height() - 4.0;
    QColor hair = dress.bow;
    constexpr double faintest = 0.25;
    hair.setAlphaF(static_cast<float>(faintest + (1.0 - faintest) * force_share_));
    painter.fillRect(QRectF(middle.x() - hair_pixels_ / 2.0, top, hair_pixels_, bottom - top), hair);
    painter.setPen(QPen(dress.bow, stick, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(QPointF(middle.x(), top), QPointF(middle.x(), bottom));
    painter.setBrush(dress.bow);
    painter.drawEllipse(QPointF(middle.x(), bottom - 4.0), 5.0, 4.0);  // the frog
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(dress.ink, 2.0));
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 4.0, 4.0);
    }
}

}  // namespace gui
