// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/lesson_page.hpp"

#include "gui/charts/lesson_charts.hpp"
#include "gui/view/desk.hpp"
#include "gui/view/words.hpp"

#include <QCheckBox>
#include <QDesktopServices>
#include <QDir>
#include <QDoubleSpinBox>
#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QProgressBar>
#include <QPushButton>
#include <QSpinBox>
#include <QUrl>
#include <QVBoxLayout>

namespace gui {
namespace {

constexpr int progress_steps = 1000;

}  // namespace

LessonPage::LessonPage(Desk& desk, QWidget* parent)
    : Page(parent),
      desk_(&desk),
      maker_([](const LessonAnswer& answer) { return charts::lesson_charts(answer.asked, answer.lesson); },
             usual_threads()),
      lowest_(new QSpinBox),
      highest_(new QSpinBox),
      heard_(new QListWidget),
      seconds_(new QDoubleSpinBox),
      opens_(new QCheckBox(tr("&Open it when it is ready"))),
      make_(new QPushButton(tr("&Make the page …"))),
      open_(new QPushButton(tr("Open in the bro&wser"))),
      stop_(new QPushButton(tr("Give &up"))),
      progress_(new QProgressBar),
      state_(new QLabel) {
    auto* columns = new QHBoxLayout(this);
    columns->addWidget(choices(), 1);
    columns->addWidget(making(), 1);
    wire();
    take_string();
}

QString LessonPage::purpose() const {
    return tr("A page to hand out: the string, the bow's places, sounds and charts in one file for any browser.");
}

QWidget* LessonPage::choices() {
    auto* box = new QWidget;
    auto* rows = new QFormLayout(box);
    lowest_->setAccessibleName(tr("Lowest stop"));
    highest_->setAccessibleName(tr("Highest stop"));
    for (QSpinBox* stop : {lowest_, highest_}) stop->setSuffix(tr(" semitones"));
    seconds_->setRange(0.3, 2.0);
    seconds_->setSingleStep(0.1);
    seconds_->setDecimals(1);
    seconds_->setValue(LessonWish{}.seconds);
    seconds_->setSuffix(tr(" s"));
    seconds_->setAccessibleName(tr("How long each stop sounds"));
    heard_->setAccessibleName(tr("Stops to listen to"));
    rows->addRow(tr("&From stop"), lowest_);
    rows->addRow(tr("To s&top"), highest_);
    rows->addRow(tr("&Each sounds for"), seconds_);
    rows->addRow(tr("Stops to &listen to"), heard_);
    return box;
}

QWidget* LessonPage::making() {
    auto* box = new QWidget;
    auto* rows = new QVBoxLayout(box);
    auto* about = new QLabel(tr(
        "The page holds the rule in plain words, the string to scale with the bow's places, every chosen stop with the "
        "bow left behind and following to listen to, the numbers for this player, how to practise, cautions and "
        "charts. "
        "It is one file: it opens in any browser without a network, and prints on A4 and Letter."));
    about->setWordWrap(true);
    auto* caution = new QLabel(Words::listening_caution());
    caution->setWordWrap(true);
    state_->setWordWrap(true);
    state_->setAccessibleName(tr("How the page comes along"));
    state_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    progress_->setRange(0, progress_steps);
    progress_->setAccessibleName(tr("Progress of the page"));
    progress_->hide();
    opens_->setChecked(true);
    open_->setEnabled(false);
    stop_->hide();
    auto* buttons = new QHBoxLayout;
    for (QPushButton* button : {make_, open_, stop_}) buttons->addWidget(button);
    buttons->addStretch(1);
    rows->addWidget(about);
    rows->addWidget(opens_);
    rows->addLayout(buttons);
    rows->addWidget(progress_);
    rows->addWidget(state_);
    rows->addStretch(1);
    rows->addWidget(caution);
    return box;
}

void LessonPage::wire() {
    connect(&desk_->selection, &Selection::instrument_changed, this, &LessonPage::take_string);
    connect(lowest_, &QSpinBox::valueChanged, this, [this](int stop) {
        highest_->setMinimum(stop);
        fill_stops();
    });
    connect(highest_, &QSpinBox::valueChanged, this, &LessonPage::fill_stops);
    connect(heard_, &QListWidget::itemChanged, this, &LessonPage::tell_choice);
    connect(make_, &QPushButton::clicked, this, &LessonPage::ask_file);
    connect(open_, &QPushButton::clicked, this, &LessonPage::open_in_browser);
    connect(stop_, &QPushButton::clicked, this, [this] {
        maker_.stop();
        state_->setText(tr("Given up; nothing was written."));
    });
    connect(&maker_, &LessonMaker::progress, this,
            [this](double share) { progress_->setValue(static_cast<int>(share * progress_steps)); });
    connect(&maker_, &LessonMaker::busy_changed, this, [this](bool busy) {
        progress_->setVisible(busy);
        stop_->setVisible(busy);
        tell_choice();
    });
    connect(&maker_, &LessonMaker::made, this, &LessonPage::tell_made);
    connect(&maker_, &LessonMaker::failed, this, [this](const QString& message) {
        state_->setText(tr("Nothing was written."));
        emit desk_->wrong(tr("The lesson's page"), message);
    });
}

void LessonPage::take_string() {
    const int last = static_cast<int>(desk_->selection.last_stop());
    lowest_->setRange(0, last);
    highest_->setRange(lowest_->value(), last);
    highest_->setValue(last);
    fill_stops();
}

void LessonPage::fill_stops() {
    const QSignalBlocker quiet(heard_);
    heard_->clear();
    for (const LessonStop& one : lesson_stops(desk_->selection, lowest_->value(), highest_->value())) {
        auto* item = new QListWidgetItem(one.label, heard_);
        item->setData(Qt::UserRole, one.stop);
        item->setFlags(Qt::ItemIsUserCheckable | Qt::ItemIsEnabled | Qt::ItemIsSelectable);
        item->setCheckState(one.usual ? Qt::Checked : Qt::Unchecked);
    }
    tell_choice();
}

LessonWish LessonPage::wish() const {
    LessonWish wish{.question = note_question(desk_->selection),
                    .lowest = lowest_->value(),
                    .highest = highest_->value(),
                    .heard = {},
                    .seconds = seconds_->value()};
    for (int row = 0; row < heard_->count(); ++row)
        if (heard_->item(row)->checkState() == Qt::Checked)
            wish.heard.push_back(heard_->item(row)->data(Qt::UserRole).toInt());
    return wish;
}

void LessonPage::tell_choice() {
    const auto count = static_cast<int>(wish().heard.size());
    const bool fits = count >= 1 && count <= most_heard_stops;
    make_->setEnabled(fits && !maker_.busy());
    make_->setToolTip(fits ? tr("Asks where the file is to go, then makes it; some ten seconds.")
                           : tr("Choose 1 to %1 stops to listen to.").arg(most_heard_stops));
}

void LessonPage::ask_file() {
    const QString file = QFileDialog::getSaveFileName(this, tr("The lesson's page"), QDir::homePath() + "/lesson.html",
                                                      tr("Pages (*.html)"));
    if (!file.isEmpty()) make(file);
}

void LessonPage::make(const QString& file) {
    state_->setText(tr("The page is being made …"));
    progress_->setValue(0);
    maker_.make(wish(), file.toStdString());
}

void LessonPage::tell_made(const QString& file) {
    file_ = file;
    open_->setEnabled(true);
    state_->setText(tr("The page is in %1").arg(file));
    emit desk_->done(tr("The lesson's page is in %1").arg(file));
    if (opens_->isChecked()) open_in_browser();
}

void LessonPage::open_in_browser() const {
    if (!QDesktopServices::openUrl(QUrl::fromLocalFile(file_)))
        state_->setText(tr("The page is in %1; no browser was found to open it.").arg(file_));
}

}  // namespace gui
