// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/dress.hpp"
#include "gui/view/stage_rows.hpp"

#include <QPainter>

#include <cmath>

namespace gui {
namespace {

constexpr double shadow = 0.35;  // opacity

void hatch(QPainter& painter, const QRectF& place, const QColor& colour, Qt::BrushStyle style) {
    painter.fillRect(place, QBrush(colour, style));
}

void centred(QPainter& painter, double x, double top, const QString& words) {
    const double wide = painter.fontMetrics().horizontalAdvance(words) + 4.0;
    painter.drawText(QRectF(x - wide / 2.0, top, wide, painter.fontMetrics().height()), Qt::AlignCenter, words);
}

}  // namespace

void StageView::paintEvent(QPaintEvent* /*event*/) {
    const Dress dress = dress_of(palette());
    const Rows row = rows();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), dress.paper);
    paint_marks(painter, dress, row);
    paint_band(painter, dress, row);
    painter.setOpacity(1.0);
    const StageScale to = scale();
    painter.setPen(QPen(dress.string, 2.2));
    painter.drawLine(QPointF(to.left, row.string), QPointF(to.right, row.string));
    paint_ruler(painter, dress, row);
    paint_words(painter, dress, row);
}

void StageView::paint_marks(QPainter& painter, const Dress& dress, const Rows& row) const {
    const StageScale to = scale();
    const double bottom = row.board_top + row.board_height;
    const double end_of_board = to.x(board_end(*selection_));
    painter.fillRect(QRectF(to.left, row.board_top, end_of_board - to.left, row.board_height), dress.board);
    for (const StageMark& mark : stage_marks(*selection_)) {
        const double x = to.x(mark.from_bridge);
        QPen pen(dress.fret, 2.0);
        QString name;
        switch (mark.kind) {
            case StageMark::Kind::nut:
                pen = QPen(dress.ink, 5.0);
                name = tr("nut");
                break;
            case StageMark::Kind::fret:
                name = QString::number(mark.number);
                break;
            case StageMark::Kind::guide_fret:
                pen = QPen(dress.fret, 2.0, Qt::DashLine);
                name = tr("guide fret");
                break;
            case StageMark::Kind::board_end:
                pen = QPen(dress.soft_ink, 1.5);
                name = tr("end of the board");
                break;
            case StageMark::Kind::bridge:
                pen = QPen(dress.ink, 6.0);
                name = tr("bridge");
                break;
        }
        painter.setPen(pen);
        painter.drawLine(QPointF(x, row.board_top), QPointF(x, bottom));
        painter.setPen(dress.soft_ink);
        centred(painter, x, row.marks, name);
    }
}

void StageView::paint_band(QPainter& painter, const Dress& dress, const Rows& row) const {
    const NoteBandPointer& band = bands_->band();
    if (!band) return;
    // what belongs to the note before is no more than a shadow
    painter.setOpacity(band->stop == selection_->stop() ? 1.0 : shadow);
    const StageScale to = scale();
    const sim::BandResult& found = band->band;
    const auto strip = [&](const sim::Band& part, double share) {
        const double tall = row.board_height * share;
        return QRectF(to.x(part.far), row.string - tall / 2.0, to.x(part.near) - to.x(part.far), tall);
    };
    if (found.band) {
        QColor fill = dress.band;
        fill.setAlpha(70);
        painter.fillRect(strip(*found.band, 0.8), fill);
        hatch(painter, strip(*found.band, 0.8), dress.band, band->fine ? Qt::FDiagPattern : Qt::BDiagPattern);
        painter.setPen(QPen(dress.band, 2.0));
        painter.drawRect(strip(*found.band, 0.8));
    } else if (found.stretch) {
        hatch(painter, strip(*found.stretch, 0.55), dress.stretch, Qt::Dense6Pattern);
        painter.setPen(QPen(dress.stretch, 1.5, Qt::DashLine));
        painter.drawRect(strip(*found.stretch, 0.55));
    }
    if (!found.best) return;
    const double x = to.x(*found.best);
    painter.setPen(QPen(dress.band, 2.5));
    const double reach = row.board_height * 0.5;
    painter.drawLine(QPointF(x, row.string - reach), QPointF(x, row.string + reach));
    const double tip = row.line * 0.35;
    painter.setBrush(dress.band);
    painter.setPen(Qt::NoPen);
    painter.drawPolygon(QPolygonF{QPointF(x, row.string + reach), QPointF(x - tip, row.string + reach + 1.4 * tip),
                                  QPointF(x + tip, row.string + reach + 1.4 * tip)});
}

void StageView::paint_ruler(QPainter& painter, const Dress& dress, const Rows& row) const {
    const StageScale to = scale();
    painter.setPen(QPen(dress.soft_ink, 1.0));
    painter.drawLine(QPointF(to.left, row.ruler), QPointF(to.right, row.ruler));
    const double unit_wide = painter.fontMetrics().horizontalAdvance(tr("mm")) + 8.0;
    for (const double place : ruler_steps(to, 3.2 * row.line)) {
        const double x = to.x(place);
        painter.drawLine(QPointF(x, row.ruler), QPointF(x, row.ruler + 0.3 * row.line));
        centred(painter, x, row.ruler + 0.35 * row.line, text_.mm_number(place));
    }
    painter.drawText(QRectF(to.right + row.line, row.ruler + 0.35 * row.line, unit_wide, row.line), Qt::AlignLeft,
                     tr("mm"));
}

QString StageView::note_words() const {
    const double stop = selection_->stop();
    const QString where =
        stop <= 0.0 ? tr("open string")
                    : tr("stop %1, %2 from the nut")
                          .arg(text_.stop(stop), text_.mm(selection_->open_length() - selection_->sounding_length()));
    return tr("%1: %2; %3 sounding").arg(selection_->note_name(), where, text_.mm(selection_->sounding_length()));
}

QString StageView::bow_words() const {
    return tr("bow %1 from the bridge (%2), %3, %4")
        .arg(text_.mm(selection_->contact()),
             text_.finger_widths(selection_->contact(), selection_->preset()->player.finger_width),
             text_.newtons(selection_->force()), text_.speed(selection_->speed()));
}

void StageView::paint_words(QPainter& painter, const Dress& dress, const Rows& row) const {
    const StageScale to = scale();
    QFont strong = font();
    strong.setBold(true);
    painter.setFont(strong);
    painter.setPen(dress.finger);
    centred(painter, to.x(selection_->sounding_length()), row.note, selection_->note_name());
    painter.setFont(font());
    painter.setPen(dress.ink);
    const double edge = 0.6 * row.line;
    const QRectF first(edge, row.words, width() - 2.0 * edge, row.line * 1.2);
    painter.drawText(first, Qt::AlignLeft, note_words());
    painter.drawText(first, Qt::AlignRight, bow_words());
    const NoteBandPointer& band = bands_->band();
    painter.setPen(band && band->stop == selection_->stop() ? dress.band : dress.soft_ink);
    painter.drawText(first.translated(0.0, 1.3 * row.line), Qt::AlignLeft, band_words());
}

QString StageView::band_words() const {
    const NoteBandPointer& band = bands_->band();
    if (!band || band->stop != selection_->stop()) return tr("Looking for the band of this note …");
    const QString words = text_.band_sentence(*band, selection_->player());
    return band->fine ? words : tr("%1 (coarse)").arg(words);
}

}  // namespace gui
