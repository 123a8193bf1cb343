// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractSlider>

namespace gui {

/// Something on the drawn string to take hold of: by the mouse anywhere on the stage, by arrow keys when it has the
/// focus.  A slider to who can't see it.
class StageHandle : public QAbstractSlider {
    Q_OBJECT

public:
    explicit StageHandle(QWidget* parent);

signals:
    /// The mouse has moved it; px in the parent's picture.
    void dragged(QPointF place);
    /// Up or down key: one step firmer (1) or lighter (-1).
    void pressed_harder(int steps);

protected:
    bool event(QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

    /// Does Up and Down change the force instead of the place?
    bool has_force_ = false;

private:
    QPointF hold_;  ///< px, where in the handle it was taken
};

/// The finger: a rounded tip, as wide as the player's.
class FingerHandle : public StageHandle {
    Q_OBJECT

public:
    explicit FingerHandle(QWidget* parent);

protected:
    void paintEvent(QPaintEvent* event) override;
};

/// The bow: a stick across the string; its ribbon of hair is as wide as the preset says, its tint tells the force.
class BowHandle : public StageHandle {
    Q_OBJECT

public:
    explicit BowHandle(QWidget* parent);
    void set_look(double hair_pixels, double force_share);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    double hair_pixels_ = 8.0;
    double force_share_ = 0.5;
};

}  // namespace gui
