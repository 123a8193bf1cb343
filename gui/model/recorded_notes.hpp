// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/recording_answer.hpp"
#include "gui/model/screen_text.hpp"

#include <QAbstractTableModel>

namespace gui {

/// The notes of a recording, a line each.
class RecordedNotes : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { from, to, note, cents, pitch, varies, brightness, clarity, clean_after, motion, column_count };

    explicit RecordedNotes(const ScreenText& text = ScreenText(), QObject* parent = nullptr);

    void set_answer(RecordingAnswerPointer answer);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;

private:
    QString text(const analysis::RecordedNote& shown, int column) const;
    QString tone_text(const analysis::Tone& tone, int column) const;

    ScreenText text_;
    RecordingAnswerPointer answer_;
};

}  // namespace gui
