// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/matched_notes.hpp"

#include "gui/model/match_words.hpp"

#include <algorithm>

namespace gui {

MatchedNotes::MatchedNotes(const ScreenText& text, QObject* parent) : QAbstractTableModel(parent), text_(text) {}

void MatchedNotes::set_answer(MatchAnswerPointer answer) {
    beginResetModel();
    answer_ = std::move(answer);
    lines_.clear();
    if (answer_) {
        for (std::size_t i = 0; i < answer_->match.notes.size(); ++i) {
            const sim::match::NoteMatch& note = answer_->match.notes[i];
            lines_.push_back({i, 0});
            if (!note.abstains.empty()) continue;
            for (std::size_t other = 1; other < sim::report::shown_strings(note).size(); ++other)
                lines_.push_back({i, other});
        }
    }
    endResetModel();
}

std::optional<int> MatchedNotes::line_of(std::size_t note) const {
    const auto found = std::ranges::find(lines_, note, &Line::note);
    if (found == lines_.end()) return std::nullopt;
    return static_cast<int>(found - lines_.begin());
}

int MatchedNotes::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

int MatchedNotes::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : column_count; }

QVariant MatchedNotes::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= column_count) return {};
    if (role == Qt::DisplayRole) {
        const QStringList names{tr("No."),
                                tr("From, s"),
                                tr("Note"),
                                tr("String"),
                                tr("Stop"),
                                tr("String sure, %"),
                                tr("Bow from, to, mm"),
                                tr("Most likely, mm"),
                                tr("Force, N"),
                                tr("In the band?"),
                                tr("Band, mm"),
                                tr("To mind")};
        return names[section];
    }
    if (role == Qt::ToolTipRole) {
        const QStringList meanings{
            tr("Notes in the order in which they sound."),
            tr("Where the note begins."),
            tr("The nearest note at the instrument's own pitch."),
            tr("A string that the note may be on; the likeliest stands first."),
            tr("Semitones above the open string."),
            tr("How likely it is that the note is on this string."),
            tr("From the bridge: the shortest region that holds as much of the likelihood as is said above."),
            tr("Contact point of the likeliest stroke, from the bridge."),
            tr("Bow force, at the bow speed that is said above."),
            tr("Whether the bow was inside the note's contact band, or its most secure stretch where it has no band."),
            tr("The contact band of this note, from the bridge; in brackets its most secure stretch where there is "
               "none."),
            tr("Why nothing can be said.")};
        return meanings[section];
    }
    return {};
}

QString MatchedNotes::band_text(const sim::match::NoteMatch& note) const {
    if (!note.band) return {};
    const auto edges = [&](const QString& words, const sim::Band& of) {
        return words.arg(text_.mm_number(of.near), text_.mm_number(of.far));
    };
    if (note.band->band) return edges(tr("%1 to %2"), *note.band->band);
    return note.band->stretch ? edges(tr("(%1 to %2)"), *note.band->stretch) : QString();
}

QString MatchedNotes::of_note(const Line& line, int column) const {
    const analysis::RecordedNote& heard = answer_->match.recording.notes[line.note];
    const sim::match::NoteMatch& found = answer_->match.notes[line.note];
    const bool says = found.abstains.empty();
    switch (column) {
        case number:
            return text_.number(static_cast<double>(line.note + 1), 0);
        case from:
            return text_.number(heard.span.start, 2);
        case pitch:
            if (!heard.tone) return tr("no pitch");
            return QString::fromStdString(nearest_pitch(heard.tone->hz, tuning_of(answer_->asked)).name);
        case in_band:
            return says ? band_place_word(found) : tr("can't be told");
        case band:
            return says ? band_text(found) : QString();
        case remark:
            return QString::fromStdString(found.abstains);
        default:
            return {};
    }
}

QString MatchedNotes::of_string(const sim::match::StringMatch& shown, int column) const {
    switch (column) {
        case string:
            return QString::fromStdString(shown.place.string);
        case stop:
            return text_.stop(shown.place.stop);
        case likely:
            return text_.number(100.0 * shown.share, 0);
        default:
            break;
    }
    if (!shown.region) return {};
    const sim::match::StrokeRegion& found = *shown.region;
    switch (column) {
        case region:
            return tr("%1 to %2").arg(text_.mm_number(found.contact.low), text_.mm_number(found.contact.high));
        case best:
            return text_.mm_number(found.best_contact);
        case force:
            return tr("%1 to %2").arg(text_.number(found.force.low, 2), text_.number(found.force.high, 2));
        default:
            return {};
    }
}

QVariant MatchedNotes::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const int column = index.column();
    if (role == Qt::TextAlignmentRole && column != pitch && column != in_band && column != remark)
        return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    if (role != Qt::DisplayRole) return {};
    const Line& line = lines_[static_cast<std::size_t>(index.row())];
    const sim::match::NoteMatch& found = answer_->match.notes[line.note];
    if (column >= string && column <= force)
        return found.abstains.empty() ? of_string(found.strings[line.string], column) : QString();
    return line.string == 0 ? of_note(line, column) : QString();
}

}  // namespace gui
