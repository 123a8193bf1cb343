// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/note_band.hpp"
#include "gui/model/screen_text.hpp"
#include "gui/model/stage_scale.hpp"

#include <QWidget>

namespace gui {

struct Dress;
class BowGuide;
class BowHandle;
class FingerHandle;

/// The string from nut to bridge to scale, its frets, the finger and the bow on it, and the contact band.
class StageView : public QWidget {
    Q_OBJECT

public:
    StageView(Selection& selection, BandFinder& bands, BowGuide& guide, QWidget* parent = nullptr);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

    /// Where a handle stands, px in this picture: for scripted hands and tests.
    QPointF finger_place() const;
    QPointF bow_place() const;
    StageScale scale() const;

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    struct Rows;
    Rows rows() const;
    void wire();
    void set_up_handles();
    void place_handles();
    void move_finger(QPointF place);
    void move_bow(QPointF place);
    void tell_values();
    void paint_marks(QPainter& painter, const Dress& dress, const Rows& rows) const;
    void paint_ruler(QPainter& painter, const Dress& dress, const Rows& rows) const;
    void paint_band(QPainter& painter, const Dress& dress, const Rows& rows) const;
    void paint_words(QPainter& painter, const Dress& dress, const Rows& rows) const;
    QString note_words() const;
    QString bow_words() const;
    QString band_words() const;

    Selection* selection_;
    BandFinder* bands_;
    BowGuide* guide_;
    FingerHandle* finger_;
    BowHandle* bow_;
    ScreenText text_;
    bool placing_ = false;
};

}  // namespace gui
