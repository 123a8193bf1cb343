// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/passage_page.hpp"

#include "gui/charts/answers.hpp"
#include "gui/view/desk.hpp"

#include <QComboBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace gui {

PassagePage::PassagePage(Desk& desk, QWidget* parent)
    : StudyPage(desk.passage, parent),
      desk_(&desk),
      notes_(new NotesTable(ScreenText(), this)),
      shipped_(new QComboBox),
      line_(new QLineEdit) {
    static_cast<QVBoxLayout*>(layout())->insertWidget(0, tune_row());
    add_table(*notes_, tr("The passage, note by note"), tr("The same numbers, a line for each note."));
    connect(&desk.passage, &Study::found, this, &PassagePage::take_answer);
}

QWidget* PassagePage::tune_row() {
    auto* widget = new QWidget;
    auto* row = new QHBoxLayout(widget);
    row->setContentsMargins(0, 0, 0, 0);
    for (const ShippedTune& tune : shipped_tunes()) shipped_->addItem(tune.name, tune.short_name);
    shipped_->setAccessibleName(tr("Tune"));
    shipped_->setToolTip(tr("Studies invented for this program."));
    connect(shipped_, &QComboBox::activated, this,
            [this](int index) { desk_->passage.set_tune(shipped_->itemData(index).toString()); });
    auto* open = new QPushButton(tr("Open a &tune …"));
    open->setToolTip(tr("MusicXML, MIDI or words."));
    connect(open, &QPushButton::clicked, this, &PassagePage::ask_open);
    line_->setPlaceholderText(tr("or type notes with their lengths: D4:1 E4:1/2 F4 A4:2, then Enter"));
    line_->setAccessibleName(tr("Notes typed"));
    connect(line_, &QLineEdit::returnPressed, this, &PassagePage::take_line);
    row->addWidget(shipped_);
    row->addWidget(open);
    row->addWidget(line_, 1);
    row->addWidget(
        hear_button(tr("Hear it le&ft behind"), tr("The bow stays where it suited the lowest note."), false));
    row->addWidget(hear_button(tr("Hear it follo&wing"), tr("The bow goes the way that the chart shows."), true));
    return widget;
}

QPushButton* PassagePage::hear_button(const QString& name, const QString& tip, bool follows) {
    auto* button = new QPushButton(name);
    button->setToolTip(tip);
    button->setEnabled(false);
    connect(button, &QPushButton::clicked, this, [this, follows] { hear(follows); });
    hear_buttons_.push_back(button);
    return button;
}

void PassagePage::ask_open() {
    const QString file = QFileDialog::getOpenFileName(
        this, tr("Open a tune"), QString(), tr("Tunes (*.musicxml *.xml *.mxl *.mid *.midi *.txt);;All files (*)"));
    if (file.isEmpty()) return;
    line_->clear();
    desk_->passage.set_tune(file);
}

void PassagePage::take_line() { desk_->passage.set_tune(line_->text()); }

void PassagePage::take_answer() {
    const PassageAnswerPointer& answer = desk_->passage.answer();
    notes_->set_answer(answer);
    for (QPushButton* button : hear_buttons_) button->setEnabled(answer->wrong.empty() && answer->fine);
}

void PassagePage::hear(bool follows) {
    const PassageAnswerPointer& answer = desk_->passage.answer();
    desk_->play_live(false);
    desk_->takes.play(follows ? answer->takes.follows : answer->takes.left_behind);
}

QString PassagePage::purpose() const {
    return tr(
        "A whole tune: where the fingers fall, how the bow moves with them, and what becomes of a bow left behind.");
}

bool PassagePage::has_answer() const { return desk_->passage.answer() != nullptr; }

StudyPage::Shown PassagePage::shown() const {
    const PassageAnswer& answer = *desk_->passage.answer();
    if (!answer.wrong.empty()) return {charts::PassageChart{}, passage_sentence(answer)};
    return {charts::passage_chart(answer.asked, answer.fingering(), answer.bowed), passage_sentence(answer)};
}

std::vector<Export> PassagePage::exports() const {
    if (!has_answer() || !chart().has_chart()) return {};
    std::vector<Export> all = passage_files(desk_->passage.answer());
    if (!all.empty()) all.insert(all.begin(), chart_export(tr("Chart of the passage"), "passage.png"));
    return all;
}

}  // namespace gui
