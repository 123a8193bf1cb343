// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/notes_table.hpp"

namespace gui {

NotesTable::NotesTable(const ScreenText& text, QObject* parent) : QAbstractTableModel(parent), text_(text) {}

void NotesTable::set_answer(PassageAnswerPointer answer) {
    beginResetModel();
    answer_ = std::move(answer);
    advice_.clear();
    if (answer_ && answer_->wrong.empty())
        advice_ = note_advice(answer_->asked.tune.tune, answer_->asked.preset, answer_->fingering());
    endResetModel();
}

int NotesTable::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(advice_.size());
}

int NotesTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : column_count; }

QVariant NotesTable::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= column_count) return {};
    if (role == Qt::DisplayRole) {
        const QStringList names{tr("Bar"),  tr("Note"),        tr("String"),         tr("Stop"),     tr("Finger"),
                                tr("Hand"), tr("Bow, mm"),     tr("Best, mm"),       tr("Band, mm"), tr("Force, N"),
                                tr("Good"), tr("Bow follows"), tr("Bow left behind")};
        return names[section];
    }
    if (role == Qt::ToolTipRole) {
        const QStringList meanings{tr("Bar of the tune."),
                                   tr("The note as it is written."),
                                   tr("String it is played on."),
                                   tr("Where the finger stops the string."),
                                   tr("0 is the open string."),
                                   tr("Which of the hand places, in their order."),
                                   tr("Where the bow is in the middle of the note, from the bridge."),
                                   tr("Where the bow does best on this note, from the bridge."),
                                   tr("The contact band; in brackets the most secure stretch where there is no band."),
                                   tr("Force of the simulated stroke."),
                                   tr("Share of good strokes where the bow is."),
                                   tr("What the string does in the simulated passage, the bow following."),
                                   tr("What it does with the bow left behind where it suited the lowest note.")};
        return meanings[section];
    }
    return {};
}

QString NotesTable::finger_text(std::size_t row, int column) const {
    const sim::score::TuneNote& written = answer_->asked.tune.tune.notes[row];
    const sim::passage::FingeredNote& fingered = answer_->fingering().notes[row];
    switch (column) {
        case bar:
            return QString::number(written.bar);
        case note:
            return QString::fromStdString(spelling_name(written.spelling));
        case string:
            return QString::fromStdString(
                answer_->asked.preset.strings[static_cast<std::size_t>(fingered.string)].name);
        case stop:
            return QString::fromStdString(advice_[row].stop);
        case finger:
            return QString::number(fingered.finger);
        default:
            return fingered.hand_place < 0 ? QString() : QString::number(fingered.hand_place + 1);
    }
}

QString NotesTable::heard_text(const sim::passage::PlayedNote& played) const {
    return played.bowed ? text_.motion(played.verdict.motion) : tr("no bow can stand there");
}

QString NotesTable::bow_text(std::size_t row, int column) const {
    const sim::passage::BowedNote& bowed = answer_->bowed.bow.notes[row];
    const sim::BandResult& result = kind_of(answer_->bowed.bow, bowed).band;
    const auto range = [this](const sim::Band& shown) {
        return tr("%1 – %2").arg(text_.mm_number(shown.near), text_.mm_number(shown.far));
    };
    switch (column) {
        case bow:
            return text_.mm_number(bowed.contact);
        case best:
            return result.best ? text_.mm_number(*result.best) : tr("none");
        case band:
            if (result.band) return range(*result.band);
            return result.stretch ? tr("(%1)").arg(range(*result.stretch)) : tr("none");
        case force:
            return text_.number(bowed.force, 2);
        case secure:
            return text_.percent(bowed.security.security);
        case follows:
            return heard_text(answer_->bowed.played.follows[row]);
        default:
            return heard_text(answer_->bowed.played.left_behind[row]);
    }
}

QVariant NotesTable::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const auto row = static_cast<std::size_t>(index.row());
    const int column = index.column();
    if (role == Qt::DisplayRole) return column < bow ? finger_text(row, column) : bow_text(row, column);
    const bool words = column == note || column == stop || column == follows || column == left_behind;
    if (role == Qt::TextAlignmentRole && !words) return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    return {};
}

}  // namespace gui
