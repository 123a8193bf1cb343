// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/note_band.hpp"
#include "gui/model/screen_text.hpp"
#include "gui/model/stage_scale.hpp"

#include <QWidget>

namespace gui {

struct Dress;
class BowGuide;

/// The string by the bridge, enlarged: the bow's place across, its force upwards.  Drag to bow.  Behind lies what the
/// strokes of the band's map did.
class BowPad : public QWidget {
    Q_OBJECT

public:
    BowPad(Selection& selection, BandFinder& bands, BowGuide& guide, QWidget* parent = nullptr);

    QSize sizeHint() const override { return {760, 360}; }
    QSize minimumSizeHint() const override { return {420, 220}; }
    /// Where the bow stands, px: for scripted hands and tests.
    QPointF bow_place() const;

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QRectF plot() const;
    StageScale places() const;
    ForceScale forces() const;
    void put(QPointF place);
    void tell_values();
    void paint_cells(QPainter& painter, const Dress& dress) const;
    void paint_axes(QPainter& painter, const Dress& dress) const;
    void paint_range(QPainter& painter, const Dress& dress) const;
    void paint_key(QPainter& painter, const Dress& dress) const;
    void paint_bow(QPainter& painter, const Dress& dress) const;

    Selection* selection_;
    BandFinder* bands_;
    BowGuide* guide_;
    ScreenText text_;
};

}  // namespace gui
