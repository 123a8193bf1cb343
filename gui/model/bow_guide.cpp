// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/bow_guide.hpp"

namespace gui {

BowGuide::BowGuide(Selection& selection, BandFinder& bands, QObject* parent)
    : QObject(parent), selection_(&selection), bands_(&bands) {
    connect(&bands, &BandFinder::found, this, &BowGuide::take_band);
    connect(&selection, &Selection::instrument_changed, this, [this] { new_instrument_ = true; });
}

double BowGuide::left_behind() const {
    const bool follows = selection_->bow_way() == BowWay::follows;
    return follows ? left_at_.value_or(selection_->contact()) : selection_->contact();
}

void BowGuide::put_by_hand(double contact) {
    new_instrument_ = false;
    selection_->set_bow_way(BowWay::left_behind);
    selection_->set_contact(contact);
}

void BowGuide::change_way() {
    if (selection_->bow_way() == BowWay::follows) {
        selection_->set_bow_way(BowWay::left_behind);
        if (left_at_) selection_->set_contact(*left_at_);
        return;
    }
    left_at_ = selection_->contact();
    selection_->set_bow_way(BowWay::follows);
    if (bands_->band()) take_band(bands_->band());
}

void BowGuide::take_band(const NoteBandPointer& band) {
    if (!band->band.best) return;
    if (selection_->bow_way() == BowWay::follows) selection_->set_contact(*band->band.best);
    if (!new_instrument_) return;
    selection_->set_contact(*band->band.best);
    left_at_ = *band->band.best;
    if (band->fine) new_instrument_ = false;
}

}  // namespace gui
