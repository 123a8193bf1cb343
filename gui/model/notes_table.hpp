// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/passage_answer.hpp"
#include "gui/model/screen_text.hpp"

#include <QAbstractTableModel>

namespace gui {

/// A passage note by note: where it is stopped, where it is bowed, and what became of it.
class NotesTable : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column {
        bar,
        note,
        string,
        stop,
        finger,
        hand,
        bow,
        best,
        band,
        force,
        secure,
        follows,
        left_behind,
        column_count
    };

    explicit NotesTable(const ScreenText& text = ScreenText(), QObject* parent = nullptr);

    void set_answer(PassageAnswerPointer answer);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;

private:
    QString finger_text(std::size_t row, int column) const;
    QString bow_text(std::size_t row, int column) const;
    QString heard_text(const sim::passage::PlayedNote& played) const;

    ScreenText text_;
    PassageAnswerPointer answer_;
    std::vector<sim::passage::NoteAdvice> advice_;
};

}  // namespace gui
