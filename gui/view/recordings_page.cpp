// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/recordings_page.hpp"

#include "gui/charts/answers.hpp"
#include "gui/model/match_words.hpp"
#include "gui/view/desk.hpp"
#include "gui/view/line_table.hpp"
#include "gui/view/listening_panel.hpp"

#include <QComboBox>
#include <QDir>
#include <QFileDialog>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QStackedLayout>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <iterator>

namespace gui {
namespace {

constexpr int progress_steps = 1000;
constexpr int side_width = 300;  // px

}  // namespace

RecordingsPage::RecordingsPage(Desk& desk, QWidget* parent)
    : Page(parent),
      desk_(&desk),
      runner_(usual_threads()),
      notes_(new RecordedNotes(ScreenText(), this)),
      matched_(new MatchedNotes(ScreenText(), this)),
      words_(new QLabel),
      find_(new QPushButton(tr("Where was the bow?"))),
      where_(new QComboBox),
      shown_(new QComboBox),
      as_table_(table_button(tr("The same, a line for each note."))),
      cancel_(new QPushButton(tr("Cancel"))),
      progress_(new QProgressBar),
      below_(new QStackedLayout),
      chart_(new ChartView),
      matched_table_(line_table(*matched_, tr("Where the bow was, note by note"))),
      listening_(new ListeningPanel(desk)) {
    auto* columns = new QHBoxLayout(this);
    auto* rows = new QVBoxLayout;
    columns->addLayout(rows, 1);
    rows->addLayout(sources());
    rows->addLayout(bow_row());
    words_->setWordWrap(true);
    words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    words_->setAccessibleName(tr("What the recording says"));
    words_->setText(tr("Open a recording of single notes, WAV, FLAC, AIFF, Ogg or MP3, or one of the two examples."));
    rows->addWidget(words_);
    rows->addWidget(results(), 1);
    listening_->setFixedWidth(side_width);
    columns->addWidget(listening_);
    wire();
    wire_bow();
    fill_shown();
    tell_places();
}

QString RecordingsPage::purpose() const {
    return tr(
        "What a recording says of each note: pitch, brightness, motion, where the bow was; and what the microphone "
        "hears as you play.");
}

QLayout* RecordingsPage::sources() {
    auto* row = new QHBoxLayout;
    const auto button = [&](const QString& words, const QString& meaning, auto act) {
        auto* made = new QPushButton(words);
        made->setToolTip(meaning);
        connect(made, &QPushButton::clicked, this, act);
        row->addWidget(made);
    };
    const auto example = [this](Example which) {
        return [this, which] { open(QString::fromStdString(example_recording(which).string())); };
    };
    button(tr("Open a recordin&g …"), tr("A sound file of single notes, one or two channels."), [this] { ask_open(); });
    button(tr("Example: bow follows"), tr("A simulated climb, the bow going to the best contact point of each note."),
           example(Example::bow_follows));
    button(tr("Example: left behind"), tr("The same climb, the bow staying where it suited the lowest note."),
           example(Example::left_behind));
    row->addStretch(1);
    progress_->setRange(0, progress_steps);
    progress_->setFixedWidth(120);
    progress_->setAccessibleName(tr("Progress of the analysis"));
    cancel_->setToolTip(tr("Gives up what is being worked out."));
    row->addWidget(progress_);
    row->addWidget(cancel_);
    progress_->hide();
    cancel_->hide();
    return row;
}

QWidget* RecordingsPage::results() {
    auto* both = new QWidget;
    both->setLayout(below_);
    below_->setContentsMargins(0, 0, 0, 0);
    chart_->setAccessibleName(tr("Chart of the recording"));
    below_->addWidget(chart_);
    below_->addWidget(line_table(*notes_, tr("Notes of the recording")));
    below_->addWidget(matched_table_);
    return both;
}

void RecordingsPage::wire() {
    connect(cancel_, &QPushButton::clicked, &runner_, &JobRunner::stop);
    connect(listening_, &ListeningPanel::recorded, this, &RecordingsPage::open);
    connect(&runner_, &JobRunner::busy_changed, this, [this](bool busy) {
        progress_->setValue(0);
        progress_->setVisible(busy);
        cancel_->setVisible(busy);
        find_->setEnabled(!busy);
    });
    connect(&runner_, &JobRunner::progress, this,
            [this](double share) { progress_->setValue(static_cast<int>(share * progress_steps)); });
    connect(&runner_, &JobRunner::failed, this,
            [this](const QString& message) { emit desk_->wrong(failure_, message); });
}

void RecordingsPage::set_looked_at(bool looked_at) {
    // A microphone that nobody looks at must not stay open.
    if (!looked_at) listening_->end();
}

void RecordingsPage::ask_open() {
    const QString file = QFileDialog::getOpenFileName(this, tr("Open a recording"), QDir::homePath(),
                                                      tr("Sounds (*.wav *.flac *.aiff *.aif *.ogg *.mp3)"));
    if (!file.isEmpty()) open(file);
}

void RecordingsPage::work(const QString& failure, JobRunner::Work work) {
    failure_ = failure;
    runner_.ask(std::move(work));
}

void RecordingsPage::open(const QString& file) {
    const RecordingQuestion question{file.toStdString(), tuning_beside(*desk_->selection.preset())};
    work(tr("This recording can't be analysed"), [this, question](const sim::Workers& workers) -> JobRunner::Delivery {
        auto answer = std::make_shared<const RecordingAnswer>(recording_answer(question, workers));
        return [this, answer] { show_answer(answer); };
    });
}

void RecordingsPage::show_answer(const RecordingAnswerPointer& answer) {
    answer_ = answer;
    match_.reset();
    notes_->set_answer(answer);
    matched_->set_answer(nullptr);
    fill_shown();
    show_chosen();
}

void RecordingsPage::show_recording() {
    if (!answer_) return;
    QString words = QString::fromStdString(recording_words(*answer_));
    if (match_) words += "\n" + MatchWords(*match_).summary();
    words_->setText(words);
    chart_->set_chart(charts::recording_chart(answer_->asked, answer_->recording), words);
}

std::vector<Export> RecordingsPage::exports() const {
    if (!answer_) return {};
    std::vector<Export> all{{tr("Chart of the recording"), tr("Pictures (*.png *.svg *.pdf)"), "recording.png",
                             [answer = answer_](const std::filesystem::path& place) {
                                 charts::save_chart(charts::recording_chart(answer->asked, answer->recording), place);
                             }}};
    std::ranges::copy(recording_tables(answer_), std::back_inserter(all));
    if (!match_) return all;
    all.push_back(match_chart());
    std::ranges::copy(match_tables(match_), std::back_inserter(all));
    return all;
}

}  // namespace gui
