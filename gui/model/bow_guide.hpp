// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/note_band.hpp"
#include "gui/model/selection.hpp"

#include <QObject>

#include <optional>

namespace gui {

/// Puts the bow where its way says: it follows the best contact point of each new band, or stays where a hand or the
/// first band of the instrument put it.
class BowGuide : public QObject {
    Q_OBJECT

public:
    BowGuide(Selection& selection, BandFinder& bands, QObject* parent = nullptr);

    /// Where the bow is, or would be, left behind, m.
    double left_behind() const;

public slots:
    /// A hand puts the bow somewhere; from then on it is left behind there.
    void put_by_hand(double contact);
    /// Left behind becomes follows, and the other way round; the bow goes back to where it was left.
    void change_way();

private:
    void take_band(const NoteBandPointer& band);

    Selection* selection_;
    BandFinder* bands_;
    std::optional<double> left_at_;  ///< m
    bool new_instrument_ = true;     ///< its first band says where the bow begins
};

}  // namespace gui
