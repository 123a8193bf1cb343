// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/stops_table.hpp"

#include "analysis/units.hpp"

namespace gui {

StopsTable::StopsTable(const ScreenText& text, QObject* parent) : QAbstractTableModel(parent), text_(text) {}

void StopsTable::set_answer(ClimbAnswerPointer answer) {
    beginResetModel();
    answer_ = std::move(answer);
    endResetModel();
}

int StopsTable::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !answer_ ? 0 : static_cast<int>(answer_->climb.stops.size());
}

int StopsTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : column_count; }

QVariant StopsTable::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= column_count) return {};
    if (role == Qt::DisplayRole) {
        const QStringList names{tr("Stop"),        tr("Note"),          tr("From nut, mm"),
                                tr("Best, mm"),    tr("Finger-widths"), tr("Band, mm"),
                                tr("Bow follows"), tr("Left behind"),   tr("Left behind fails by")};
        return names[section];
    }
    if (role == Qt::ToolTipRole) {
        const QStringList meanings{tr("Semitones above the open string."),
                                   tr("Its name at the instrument's own pitch."),
                                   tr("Where the finger stops the string, from the nut."),
                                   tr("The best contact point: where the bow does best, from the bridge."),
                                   tr("The same, in widths of your finger."),
                                   tr("The contact band: where enough of the strokes are good, from the bridge."),
                                   tr("Share of good strokes with the bow at the best contact point of each note."),
                                   tr("Share of good strokes with the bow where it suited the lowest note."),
                                   tr("What most often goes wrong with the bow left behind.")};
        return meanings[section];
    }
    return {};
}

QString StopsTable::text(const sim::ClimbStop& shown, int column) const {
    const auto mm = [this](double metres) { return text_.number(analysis::mm_from_metres(metres), 0); };
    const sim::BandResult& result = shown.band;
    switch (column) {
        case stop:
            return text_.stop(shown.note.stop);
        case note:
            return QString::fromStdString(
                sim::pitch_name(sim::fundamental(shown.note.string), answer_->asked.reference_pitch));
        case from_nut:
            return mm(shown.from_nut);
        case best:
            return result.best ? mm(*result.best) : tr("none");
        case widths:
            return result.best ? text_.number(*result.best / answer_->climb.player.finger_width, 1) : QString();
        case band:
            return result.band ? tr("%1 – %2").arg(mm(result.band->near), mm(result.band->far)) : tr("none");
        case follows:
            return text_.percent(result.at_best.security);
        case left_behind:
            return text_.percent(shown.left_behind.security.security);
        case fails_by:
            return shown.left_behind.security.fails_by == sim::Fault::none
                       ? QString()
                       : text_.fault(shown.left_behind.security.fails_by);
        default:
            return {};
    }
}

QVariant StopsTable::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const sim::ClimbStop& shown = answer_->climb.stops[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole) return text(shown, index.column());
    if (role == Qt::TextAlignmentRole && index.column() != note && index.column() != fails_by)
        return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    return {};
}

}  // namespace gui
