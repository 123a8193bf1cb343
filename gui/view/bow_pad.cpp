// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/bow_pad.hpp"

#include "gui/model/bow_guide.hpp"
#include "gui/view/dress.hpp"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <cmath>

namespace gui {
namespace {

constexpr double place_step = 0.001;  // m, a key's
constexpr double force_step = 1.08;   // a key's

/// Full, dense and sparse, so that colour is not needed to tell them apart.
QBrush cell_brush(const Dress& dress, sim::Fault fault) {
    if (fault == sim::Fault::none) return dress.good;
    if (sim::is_speaking(fault)) return {dress.weak.lighter(dress.dark ? 130 : 95), Qt::Dense4Pattern};
    return {dress.soft_ink, Qt::Dense7Pattern};
}

}  // namespace

BowPad::BowPad(Selection& selection, BandFinder& bands, BowGuide& guide, QWidget* parent)
    : QWidget(parent), selection_(&selection), bands_(&bands), guide_(&guide) {
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::CrossCursor);
    setAccessibleName(tr("Bowing place and force"));
    setToolTip(tr("Drag to bow: across is the contact point, upwards is the bow force. Arrow keys do the same."));
    const auto refresh = [this] {
        tell_values();
        update();
    };
    connect(selection_, &Selection::instrument_changed, this, refresh);
    connect(selection_, &Selection::stop_changed, this, refresh);
    connect(selection_, &Selection::stroke_changed, this, refresh);
    connect(bands_, &BandFinder::found, this, refresh);
}

QRectF BowPad::plot() const {
    const double line = fontMetrics().height();
    return QRectF(rect()).adjusted(4.2 * line, 1.9 * line, -2.0 * line, -2.9 * line);
}

StageScale BowPad::places() const {
    return {.left = plot().left(), .right = plot().right(), .length = pad_length(*selection_)};
}

ForceScale BowPad::forces() const {
    return {.top = plot().top(),
            .bottom = plot().bottom(),
            .lightest = selection_->lightest(),
            .firmest = selection_->firmest()};
}

QPointF BowPad::bow_place() const { return {places().x(selection_->contact()), forces().y(selection_->force())}; }

void BowPad::put(QPointF place) {
    guide_->put_by_hand(places().from_bridge(place.x()));
    selection_->set_force(forces().force(place.y()));
}

void BowPad::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) put(event->position());
}

void BowPad::mouseMoveEvent(QMouseEvent* event) {
    if (event->buttons() & Qt::LeftButton) put(event->position());
}

void BowPad::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Left:
            return guide_->put_by_hand(selection_->contact() + place_step);
        case Qt::Key_Right:
            return guide_->put_by_hand(selection_->contact() - place_step);
        case Qt::Key_Up:
            return selection_->set_force(selection_->force() * force_step);
        case Qt::Key_Down:
            return selection_->set_force(selection_->force() / force_step);
        default:
            QWidget::keyPressEvent(event);
    }
}

void BowPad::tell_values() {
    setAccessibleDescription(
        tr("%1 from the bridge, %2").arg(text_.mm(selection_->contact()), text_.newtons(selection_->force())));
}

void BowPad::paintEvent(QPaintEvent* /*event*/) {
    const Dress dress = dress_of(palette());
    QPainter painter(this);
    painter.fillRect(rect(), dress.paper);
    painter.setClipRect(plot());
    constexpr double shadow = 0.35;  // opacity of what belongs to the note before
    const NoteBandPointer& band = bands_->band();
    painter.setOpacity(band && band->stop == selection_->stop() ? 1.0 : shadow);
    paint_cells(painter, dress);
    painter.setRenderHint(QPainter::Antialiasing);
    paint_range(painter, dress);
    painter.setClipping(false);
    painter.setOpacity(1.0);
    painter.setBrush(Qt::NoBrush);
    paint_axes(painter, dress);
    paint_key(painter, dress);
    paint_bow(painter, dress);
    if (hasFocus()) {
        painter.setPen(QPen(dress.band, 2.0));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
}

void BowPad::paint_cells(QPainter& painter, const Dress& dress) const {
    const NoteBandPointer& band = bands_->band();
    if (!band) return;
    const std::vector<double> across = cell_edges(band->contacts);
    const std::vector<double> upwards = cell_edges(band->forces);
    const StageScale x = places();
    const ForceScale y = forces();
    for (std::size_t i = 0; i < band->contacts.size(); ++i) {
        for (std::size_t j = 0; j < band->forces.size(); ++j) {
            const sim::Fault fault = band->cells[i * band->forces.size() + j].fault;
            const QRectF cell(QPointF(x.x(across[i + 1]), y.y(upwards[j + 1])),
                              QPointF(x.x(across[i]), y.y(upwards[j])));
            painter.fillRect(cell, cell_brush(dress, fault));
        }
    }
}

void BowPad::paint_range(QPainter& painter, const Dress& dress) const {
    const ForceScale y = forces();
    painter.setPen(QPen(dress.soft_ink, 1.2, Qt::DashLine));
    for (const double force : {selection_->preset()->player.force_low, selection_->preset()->player.force_high})
        painter.drawLine(QPointF(plot().left(), y.y(force)), QPointF(plot().right(), y.y(force)));
    const NoteBandPointer& band = bands_->band();
    if (!band) return;
    const StageScale x = places();
    const auto line = [&](double place, const QPen& pen) {
        painter.setPen(pen);
        painter.drawLine(QPointF(x.x(place), plot().top()), QPointF(x.x(place), plot().bottom()));
    };
    const sim::BandResult& found = band->band;
    const sim::Band* shown = found.band ? &*found.band : found.stretch ? &*found.stretch : nullptr;
    if (shown != nullptr) {
        const QPen pen(found.band ? dress.band : dress.stretch, 2.0, found.band ? Qt::SolidLine : Qt::DashLine);
        line(shown->near, pen);
        line(shown->far, pen);
    }
    if (found.best) line(*found.best, QPen(dress.band, 3.0, Qt::DotLine));
}

void BowPad::paint_axes(QPainter& painter, const Dress& dress) const {
    const double line = fontMetrics().height();
    const StageScale x = places();
    const ForceScale y = forces();
    painter.setPen(QPen(dress.ink, 1.2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(plot());
    for (const double place : ruler_steps(x, 3.5 * line)) {
        painter.drawLine(QPointF(x.x(place), plot().bottom()), QPointF(x.x(place), plot().bottom() + 5.0));
        painter.drawText(QRectF(x.x(place) - 3.0 * line, plot().bottom() + 6.0, 6.0 * line, line), Qt::AlignHCenter,
                         text_.mm_number(place));
    }
    const double step = std::pow(selection_->firmest() / selection_->lightest(), 0.25);
    for (int i = 0; i <= 4; ++i) {
        const double force = selection_->lightest() * std::pow(step, i);
        painter.drawLine(QPointF(plot().left() - 5.0, y.y(force)), QPointF(plot().left(), y.y(force)));
        painter.drawText(QRectF(0.0, y.y(force) - line / 2.0, plot().left() - 8.0, line), Qt::AlignRight,
                         text_.number(force, force < 0.1 ? 3 : 2));
    }
    painter.drawText(QRectF(plot().left(), plot().bottom() + 1.5 * line, plot().width(), line), Qt::AlignHCenter,
                     tr("contact point, mm from the bridge (bridge on the right)"));
    painter.drawText(QRectF(4.0, 2.0, width(), line), Qt::AlignLeft, tr("bow force, N"));
}

void BowPad::paint_key(QPainter& painter, const Dress& dress) const {
    const double line = fontMetrics().height();
    double x = plot().right();
    const auto add = [&](sim::Fault fault, const QString& words) {
        const double wide = painter.fontMetrics().horizontalAdvance(words);
        x -= wide;
        painter.setPen(dress.ink);
        painter.drawText(QRectF(x, 2.0, wide + 2.0, line), Qt::AlignLeft, words);
        x -= 1.5 * line;
        const QRectF sample(x, 4.0, 1.2 * line, line - 4.0);
        painter.fillRect(sample, cell_brush(dress, fault));
        painter.setPen(QPen(dress.soft_ink, 1.0));
        painter.drawRect(sample);
        x -= line;
    };
    add(sim::Fault::never_slips, tr("does not speak"));
    add(sim::Fault::tone_weak, tr("speaks, but weak, dull or flat"));
    add(sim::Fault::none, tr("sings"));
}

void BowPad::paint_bow(QPainter& painter, const Dress& dress) const {
    const double radius = fontMetrics().height() * 0.55;
    const QPointF place = bow_place();
    painter.setPen(QPen(dress.bow, 1.5));
    painter.drawLine(QPointF(place.x(), plot().top()), QPointF(place.x(), plot().bottom()));
    painter.setPen(QPen(dress.paper, 2.0));
    painter.setBrush(dress.bow);
    painter.drawEllipse(place, radius, radius);
}

}  // namespace gui
