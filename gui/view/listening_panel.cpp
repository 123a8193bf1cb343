// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/listening_panel.hpp"

#include "gui/model/export.hpp"
#include "gui/view/desk.hpp"

#include <QDir>
#include <QFileDialog>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <cmath>

namespace gui {
namespace {

QLabel* told(const QString& name) {
    auto* label = new QLabel;
    label->setAccessibleName(name);
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return label;
}

}  // namespace

ListeningPanel::ListeningPanel(Desk& desk, QWidget* parent)
    : QWidget(parent),
      desk_(&desk),
      listen_(new QPushButton(tr("&Listen to me play"))),
      record_(new QPushButton(tr("Rec&ord"))),
      pitch_(told(tr("Note heard"))),
      off_(told(tr("Pitch against the selected note"))),
      brightness_(told(tr("Brightness"))),
      motion_(told(tr("Motion of the string, by its sound"))),
      verdict_(told(tr("Does it keep its tone"))),
      state_(told(tr("State of the microphone"))) {
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->addLayout(buttons());
    rows->addWidget(state_);
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() * 1.6);
    large.setBold(true);
    pitch_->setFont(large);
    pitch_->setMinimumHeight(QFontMetrics(large).height());
    rows->addWidget(pitch_);
    auto* form = new QFormLayout;
    form->addRow(tr("Pitch"), off_);
    form->addRow(tr("Brightness"), brightness_);
    form->addRow(tr("Motion"), motion_);
    rows->addLayout(form);
    for (QLabel* label : {off_, brightness_, motion_, verdict_}) label->setMinimumHeight(2 * fontMetrics().height());
    rows->addWidget(verdict_);
    auto* caution = new QLabel(tr(
        "How loud it is can't be judged: distance, room and microphone are not known. Brightness is held against the "
        "simulated instrument, whose body is not yours; the motion is a guess by ear. Nothing is stored unless you "
        "record."));
    caution->setWordWrap(true);
    caution->setAccessibleName(tr("What this can't tell"));
    rows->addWidget(caution);
    rows->addStretch(1);
    wire();
    end();
}

QLayout* ListeningPanel::buttons() {
    auto* row = new QHBoxLayout;
    listen_->setCheckable(true);
    listen_->setToolTip(tr("Takes the microphone and tells what it hears of you, against the note under the finger."));
    record_->setCheckable(true);
    record_->setToolTip(
        tr("Keeps what comes in until you press again, ten minutes at the most; then asks for a file."));
    row->addWidget(listen_, 1);
    row->addWidget(record_);
    return row;
}

void ListeningPanel::wire() {
    Listening& listening = desk_->listening;
    connect(listen_, &QPushButton::clicked, this, [this](bool on) { on ? desk_->listening.start() : end(); });
    connect(&listening, &Listening::listening_changed, this, [this](bool on) {
        listen_->setChecked(on);
        record_->setEnabled(on || record_->isChecked());
        if (on) show_nothing(tr("Listening …"));
    });
    connect(&listening, &Listening::heard, this, &ListeningPanel::show_heard);
    connect(&listening, &Listening::failed, this, [this](const QString& message) {
        if (record_->isChecked()) save_kept();
        record_->setEnabled(false);
        show_nothing(message);
    });
    connect(record_, &QPushButton::clicked, this, [this](bool on) {
        if (!on) return save_kept();
        desk_->listening.keep(true);
        record_->setText(tr("St&op and save …"));
    });
}

void ListeningPanel::end() {
    desk_->listening.stop();
    desk_->listening.keep(false);
    desk_->listening.take_kept();
    record_->setChecked(false);
    record_->setText(tr("Rec&ord"));
    record_->setEnabled(false);
    listen_->setChecked(false);
    show_nothing(tr("The microphone is off."));
}

void ListeningPanel::show_nothing(const QString& why) {
    state_->setText(why);
    pitch_->setText(tr("–"));
    for (QLabel* label : {off_, brightness_, motion_, verdict_}) label->clear();
}

void ListeningPanel::show_heard(const gui::HeardSound& sound) {
    tell_kept();
    motion_->setText(text_.heard_motion(sound.motion));
    if (sound.pitch_hz <= 0.0) {
        pitch_->setText(tr("no clear pitch"));
        off_->clear();
        brightness_->clear();
        verdict_->clear();
        return;
    }
    const sim::TemperedPitch nearest = nearest_pitch(sound.pitch_hz, tuning_beside(*desk_->selection.preset()));
    pitch_->setText(
        tr("%1  %2 cents").arg(QString::fromStdString(nearest.name), text_.signed_number(nearest.cents, 0)));
    const Selection& now = desk_->selection;
    const NoteBand* band = desk_->bands.band().get();
    const bool same = band != nullptr && band->stop == now.stop();
    show_verdict(judge_tone({sound.pitch_hz, sound.brightness_f0},
                            wanted_tone(now.pitch_hz(), now.player(), same ? band : nullptr)));
    brightness_->setText(tr("%1 times the pitch").arg(text_.number(sound.brightness_f0, 1)) + brightness_->text());
    off_->setText(tr("%1; ").arg(text_.hertz(sound.pitch_hz)) + off_->text());
    if (sound.clipped) state_->setText(tr("Too loud for the microphone: turn its level down or stand farther away."));
}

void ListeningPanel::show_verdict(const ToneVerdict& verdict) {
    const QString note = desk_->selection.note_name();
    off_->setText(verdict.another_note ? tr("another note than %1").arg(note)
                                       : tr("%1 cents from %2").arg(text_.signed_number(verdict.cents, 0), note));
    brightness_->setText(verdict.share ? tr(", %1 of the note's best").arg(text_.percent(*verdict.share)) : QString());
    if (verdict.another_note)
        verdict_->setText(tr("Play %1, or put the finger where you play.").arg(note));
    else if (!verdict.in_tune)
        verdict_->setText(verdict.cents < 0.0 ? tr("Too low to keep its tone.") : tr("Too high to keep its tone."));
    else if (!verdict.bright)
        verdict_->setText(tr("In tune."));
    else
        verdict_->setText(*verdict.bright ? tr("In tune and bright enough: it keeps its tone.")
                                          : tr("In tune, but dull beside the note's best."));
}

void ListeningPanel::tell_kept() {
    const Listening& listening = desk_->listening;
    if (record_->isChecked() && !listening.keeping()) return save_kept();
    state_->setText(listening.keeping()
                        ? tr("Recording: %1 s").arg(text_.number(std::floor(listening.kept_seconds()), 0))
                        : tr("Listening; nothing is stored."));
}

void ListeningPanel::save_kept() {
    desk_->listening.keep(false);
    const auto kept = std::make_shared<const analysis::Signal>(desk_->listening.take_kept());
    record_->setChecked(false);
    record_->setText(tr("Rec&ord"));
    record_->setEnabled(desk_->listening.listening());
    if (kept->samples.empty()) return;
    const Export sound = played_sound(kept);
    const QString file =
        QFileDialog::getSaveFileName(this, sound.name, QDir::homePath() + "/" + sound.file_name, sound.endings);
    if (file.isEmpty()) return;
    try {
        sound.write(file.toStdString());
    } catch (const std::exception& wrong) {
        emit desk_->wrong(tr("Recording"), tr("Nothing was written.\n%1").arg(QString::fromUtf8(wrong.what())));
        return;
    }
    emit desk_->done(tr("What you played is in %1").arg(file));
    emit recorded(file);
}

}  // namespace gui
