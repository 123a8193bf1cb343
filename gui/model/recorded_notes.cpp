// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/recorded_notes.hpp"

#include "analysis/units.hpp"

namespace gui {

RecordedNotes::RecordedNotes(const ScreenText& text, QObject* parent) : QAbstractTableModel(parent), text_(text) {}

void RecordedNotes::set_answer(RecordingAnswerPointer answer) {
    beginResetModel();
    answer_ = std::move(answer);
    endResetModel();
}

int RecordedNotes::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !answer_ ? 0 : static_cast<int>(answer_->recording.notes.size());
}

int RecordedNotes::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : column_count; }

QVariant RecordedNotes::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= column_count) return {};
    if (role == Qt::DisplayRole) {
        const QStringList names{
            tr("From, s"),         tr("To, s"),      tr("Note"),      tr("Off by, cents"), tr("Pitch, Hz"),
            tr("Varies, ± cents"), tr("Brightness"), tr("Clear, dB"), tr("Clean, ms"),     tr("Motion, by its sound")};
        return names[section];
    }
    if (role == Qt::ToolTipRole) {
        const QStringList meanings{
            tr("Where the note begins."),
            tr("Where it ends."),
            tr("The nearest note at the instrument's own pitch."),
            tr("How far the note lies above it; 100 cents are a semitone."),
            tr("The median over the steady part."),
            tr("How far the pitch goes either way: vibrato, or an unsteady tone."),
            tr("The centroid of the partials to 8 kHz, in multiples of the pitch: a dull tone has 2, a bright one 6."),
            tr("Harmonic-to-noise ratio: the tone against the noise of bow and room."),
            tr("Time from the beginning until the tone is clean."),
            tr("How the string seems to move, with the share of such sounds for which that is right.")};
        return meanings[section];
    }
    return {};
}

QString RecordedNotes::tone_text(const analysis::Tone& tone, int column) const {
    const sim::TemperedPitch nearest = nearest_pitch(tone.hz, answer_->asked.tuning);
    switch (column) {
        case note:
            return QString::fromStdString(nearest.name);
        case cents:
            return text_.signed_number(nearest.cents, 0);
        case pitch:
            return text_.number(tone.hz, 1);
        case varies:
            return text_.number(tone.stability, 0);
        case brightness:
            return text_.number(tone.centroid_hz / tone.hz, 1);
        case clarity:
            return text_.number(tone.clarity_db, 0);
        default:
            return {};
    }
}

QString RecordedNotes::text(const analysis::RecordedNote& shown, int column) const {
    switch (column) {
        case from:
            return text_.number(shown.span.start, 2);
        case to:
            return text_.number(shown.span.end, 2);
        case clean_after:
            return shown.clean_after ? text_.number(analysis::ms_from_seconds(*shown.clean_after), 0) : QString();
        case motion:
            return text_.heard_motion(shown.motion);
        default:
            if (shown.tone) return tone_text(*shown.tone, column);
            return column == note ? tr("no pitch") : QString();
    }
}

QVariant RecordedNotes::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const analysis::RecordedNote& shown = answer_->recording.notes[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole) return text(shown, index.column());
    if (role == Qt::TextAlignmentRole && index.column() != note && index.column() != motion)
        return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    return {};
}

}  // namespace gui
