// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/match_answer.hpp"
#include "gui/model/match_words.hpp"
#include "gui/view/desk.hpp"
#include "gui/view/recordings_page.hpp"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QStackedLayout>
#include <QTableView>

/// Where the bow was: the part of the page of recordings that asks for it and shows it.
namespace gui {
namespace {

enum Below { chart, recorded_table, matched_table };

}  // namespace

QLayout* RecordingsPage::bow_row() {
    auto* row = new QHBoxLayout;
    find_->setToolTip(
        tr("Holds the recording against simulated strokes of the instrument and the bow speed on the stage: where the "
           "bow may have been on each note, and whether that is inside the contact band. Takes a while."));
    where_->setAccessibleName(tr("Where the notes are looked for"));
    where_->setToolTip(
        tr("String and stop are those on the stage. On any string takes longer and may name a wrong one."));
    where_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    shown_->setAccessibleName(tr("What is shown"));
    shown_->setToolTip(tr("The recording as a whole, or where the bow was on one of its notes."));
    shown_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    row->addWidget(find_);
    row->addWidget(where_);
    row->addStretch(1);
    row->addWidget(new QLabel(tr("Shown")));
    row->addWidget(shown_);
    row->addWidget(as_table_);
    return row;
}

void RecordingsPage::wire_bow() {
    connect(find_, &QPushButton::clicked, this, &RecordingsPage::find_bow);
    connect(&desk_->selection, &Selection::instrument_changed, this, &RecordingsPage::tell_places);
    connect(&desk_->selection, &Selection::stop_changed, this, &RecordingsPage::tell_places);
    connect(shown_, &QComboBox::currentIndexChanged, this, &RecordingsPage::show_chosen);
    connect(as_table_, &QPushButton::toggled, this, &RecordingsPage::show_chosen);
    connect(matched_table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& line) {
                if (line.isValid()) shown_->setCurrentIndex(static_cast<int>(matched_->note_of(line.row())) + 1);
            });
}

void RecordingsPage::tell_places() {
    // the string on the stage unless chosen otherwise: a sound alone seldom tells the string, and may name a wrong one
    const int chosen = where_->count() > 0 ? where_->currentIndex() : static_cast<int>(LookedFor::this_string);
    where_->clear();
    for (const LookedFor where : {LookedFor::any_string, LookedFor::this_string, LookedFor::this_stop})
        where_->addItem(looked_for_words(desk_->selection, where), static_cast<int>(where));
    where_->setCurrentIndex(chosen);
}

void RecordingsPage::fill_shown() {
    const QSignalBlocker quiet(shown_);
    shown_->clear();
    shown_->addItem(tr("the recording"));
    for (std::size_t i = 0; match_ && i < match_->match.notes.size(); ++i)
        shown_->addItem(MatchWords(*match_).title(i));
    shown_->setEnabled(shown_->count() > 1);
}

void RecordingsPage::find_bow() {
    if (!answer_) {
        words_->setText(tr("There is no recording yet: open one, or record what you play, then ask again."));
        return;
    }
    const MatchQuestion question{.note = note_question(desk_->selection),
                                 .file = answer_->asked.file,
                                 .where = static_cast<LookedFor>(where_->currentData().toInt()),
                                 .grid = grid_};
    work(tr("Where the bow was can't be told"), [this, question](const sim::Workers& workers) -> JobRunner::Delivery {
        auto match = std::make_shared<const MatchAnswer>(match_answer(question, workers));
        return [this, match] { take_match(match); };
    });
}

void RecordingsPage::take_match(const MatchAnswerPointer& match) {
    match_ = match;
    matched_->set_answer(match);
    fill_shown();
    {
        const QSignalBlocker quiet(shown_);
        if (!match->match.notes.empty())
            shown_->setCurrentIndex(static_cast<int>(sim::report::first_told(match->match)) + 1);
    }
    show_chosen();
}

std::optional<std::size_t> RecordingsPage::note_shown() const {
    if (!match_ || shown_->currentIndex() < 1) return std::nullopt;
    return static_cast<std::size_t>(shown_->currentIndex() - 1);
}

void RecordingsPage::show_chosen() {
    const std::optional<std::size_t> note = note_shown();
    note ? show_note(*note) : show_recording();
    below_->setCurrentIndex(!as_table_->isChecked() ? chart : note ? matched_table : recorded_table);
}

void RecordingsPage::show_note(std::size_t note) {
    const MatchWords all(*match_);
    words_->setText(all.summary() + "\n" + all.of_note(note) + "\n" + all.cautions());
    chart_->set_chart(charts::match_chart(match_->asked, match_->match, note), all.of_note(note));
    const QModelIndex line = matched_table_->currentIndex();
    if (!line.isValid() || matched_->note_of(line.row()) != note)
        matched_table_->setCurrentIndex(matched_->index(*matched_->line_of(note), 0));
}

Export RecordingsPage::match_chart() const {
    const std::size_t note = note_shown().value_or(sim::report::first_told(match_->match));
    return {tr("Chart of where the bow was"), tr("Pictures (*.png *.svg *.pdf)"), "where_the_bow_was.png",
            [match = match_, note](const std::filesystem::path& place) {
                charts::save_chart(charts::match_chart(match->asked, match->match, note), place);
            }};
}

}  // namespace gui
