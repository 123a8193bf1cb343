// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/stage_view.hpp"

#include "gui/model/bow_guide.hpp"
#include "gui/view/stage_handles.hpp"
#include "gui/view/stage_rows.hpp"

#include <QMouseEvent>

#include <cmath>

namespace gui {
namespace {

constexpr double stop_steps = 20.0;      // of the finger's slider, a semitone
constexpr double contact_steps = 10000;  // of the bow's slider, a metre
constexpr double force_step = 1.08;      // a key's
constexpr int least_grip = 26;           // px, wide enough to take hold of

}  // namespace

StageView::StageView(Selection& selection, BandFinder& bands, BowGuide& guide, QWidget* parent)
    : QWidget(parent),
      selection_(&selection),
      bands_(&bands),
      guide_(&guide),
      finger_(new FingerHandle(this)),
      bow_(new BowHandle(this)) {
    setAccessibleName(tr("String from nut to bridge"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    set_up_handles();
    wire();
}

void StageView::wire() {
    connect(finger_, &StageHandle::dragged, this, &StageView::move_finger);
    connect(bow_, &StageHandle::dragged, this, &StageView::move_bow);
    connect(finger_, &QAbstractSlider::valueChanged, this, [this](int value) {
        if (!placing_) selection_->set_stop(value / stop_steps);
    });
    connect(bow_, &QAbstractSlider::valueChanged, this, [this](int value) {
        if (!placing_) guide_->put_by_hand(value / contact_steps);
    });
    connect(bow_, &StageHandle::pressed_harder, this,
            [this](int steps) { selection_->set_force(selection_->force() * std::pow(force_step, steps)); });
    connect(selection_, &Selection::instrument_changed, this, &StageView::set_up_handles);
    connect(selection_, &Selection::stop_changed, this, &StageView::place_handles);
    connect(selection_, &Selection::stroke_changed, this, &StageView::place_handles);
    connect(bands_, &BandFinder::found, this, qOverload<>(&StageView::update));
}

StageView::Rows StageView::rows() const { return Rows(size(), fontMetrics().height()); }
QSize StageView::sizeHint() const { return {1000, Rows::height(fontMetrics().height())}; }
QSize StageView::minimumSizeHint() const { return {600, sizeHint().height()}; }

StageScale StageView::scale() const {
    const Rows place = rows();
    return {.left = place.left, .right = place.right, .length = selection_->open_length()};
}

void StageView::set_up_handles() {
    placing_ = true;
    finger_->setRange(0, static_cast<int>(selection_->last_stop() * stop_steps));
    finger_->setSingleStep(static_cast<int>(stop_steps));
    finger_->setPageStep(static_cast<int>(5 * stop_steps));
    bow_->setSingleStep(static_cast<int>(contact_steps / 1000));
    bow_->setPageStep(static_cast<int>(contact_steps / 100));
    bow_->setInvertedControls(true);  // towards the bridge is to the right
    placing_ = false;
    place_handles();
}

QPointF StageView::finger_place() const { return QRectF(finger_->geometry()).center(); }
QPointF StageView::bow_place() const { return QRectF(bow_->geometry()).center(); }

void StageView::place_handles() {
    const Rows row = rows();
    const StageScale to = scale();
    placing_ = true;
    finger_->setValue(static_cast<int>(std::lround(selection_->stop() * stop_steps)));
    bow_->setRange(static_cast<int>(selection_->floor() * contact_steps),
                   static_cast<int>(std::ceil(selection_->farthest() * contact_steps)));
    bow_->setValue(static_cast<int>(std::lround(selection_->contact() * contact_steps)));
    placing_ = false;
    const double wide = selection_->preset()->player.finger_width * to.pixels_per_metre();
    const QSize tip(static_cast<int>(wide), static_cast<int>(row.board_height));
    finger_->resize(tip);
    // a fret stops the string in front of the finger
    const bool on_fret = selection_->stop() > 0.0 && selection_->stop() <= selection_->preset()->frets;
    const double shift = selection_->stop() <= 0.0 ? -wide : on_fret ? -wide / 2.0 : 0.0;
    const double x = to.x(selection_->sounding_length()) + shift;
    finger_->move(static_cast<int>(x - wide / 2.0), static_cast<int>(row.string - row.board_height * 0.3));
    bow_->resize(least_grip, static_cast<int>(row.bow_height));
    bow_->set_look(selection_->preset()->hair_width * to.pixels_per_metre(), force_share(*selection_));
    bow_->move(static_cast<int>(std::lround(to.x(selection_->contact()) - least_grip / 2.0)),
               static_cast<int>(row.string - row.bow_height / 2.0));
    tell_values();
    update();
}

void StageView::tell_values() {
    finger_->setAccessibleDescription(note_words());
    bow_->setAccessibleDescription(bow_words());
}

void StageView::move_finger(QPointF place) {
    selection_->set_stop(selection_->stop_at(scale().from_bridge(place.x())));
}

void StageView::move_bow(QPointF place) {
    const Rows row = rows();
    guide_->put_by_hand(scale().from_bridge(place.x()));
    // the string's own height is the middle of the forces; half a bow's length up is the firmest
    const ForceScale force{.top = row.string - row.bow_height / 2.0,
                           .bottom = row.string + row.bow_height / 2.0,
                           .lightest = selection_->lightest(),
                           .firmest = selection_->firmest()};
    selection_->set_force(force.force(place.y()));
}

void StageView::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return;
    // on the board it is the finger that goes there
    const double from_bridge = scale().from_bridge(event->position().x());
    if (from_bridge >= board_end(*selection_)) move_finger(event->position());
}

void StageView::resizeEvent(QResizeEvent* /*event*/) { place_handles(); }

}  // namespace gui
