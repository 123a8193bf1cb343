// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/match_answer.hpp"
#include "gui/model/screen_text.hpp"

#include <QAbstractTableModel>

#include <optional>
#include <vector>

namespace gui {

/// Where the bow was on the notes of a recording: a line for each, and one more for each other string it may be on.
class MatchedNotes : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { number, from, pitch, string, stop, likely, region, best, force, in_band, band, remark, column_count };

    explicit MatchedNotes(const ScreenText& text = ScreenText(), QObject* parent = nullptr);

    /// May be empty.
    void set_answer(MatchAnswerPointer answer);
    /// Index of the note that a line speaks of.
    std::size_t note_of(int row) const { return lines_[static_cast<std::size_t>(row)].note; }
    /// First line of a note.
    std::optional<int> line_of(std::size_t note) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;

private:
    struct Line {
        std::size_t note;
        std::size_t string;  ///< 0: the likeliest
    };
    QString of_note(const Line& line, int column) const;
    QString of_string(const sim::match::StringMatch& string, int column) const;
    QString band_text(const sim::match::NoteMatch& note) const;

    ScreenText text_;
    MatchAnswerPointer answer_;
    std::vector<Line> lines_;
};

}  // namespace gui
