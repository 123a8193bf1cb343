// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/answers.hpp"
#include "gui/model/screen_text.hpp"

#include <QAbstractTableModel>

namespace gui {

/// A climb stop by stop: where the finger is, where the bow does best, and what a bow left behind is worth.
class StopsTable : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { stop, note, from_nut, best, widths, band, follows, left_behind, fails_by, column_count };

    explicit StopsTable(const ScreenText& text = ScreenText(), QObject* parent = nullptr);

    void set_answer(ClimbAnswerPointer answer);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;

private:
    QString text(const sim::ClimbStop& shown, int column) const;

    ScreenText text_;
    ClimbAnswerPointer answer_;
};

}  // namespace gui
