// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/set_up_wizard.hpp"

#include "gui/model/screen_text.hpp"
#include "gui/sound/take_player.hpp"
#include "gui/view/words.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QPushButton>
#include <QVBoxLayout>

#include <exception>

namespace gui {
namespace {

enum PageNumber { start, string, hand, strokes };

QLabel* words(const QString& text) {
    auto* label = new QLabel(text);
    label->setWordWrap(true);
    return label;
}

QDoubleSpinBox* box(double low, double high, double step, const QString& unit, const QString& name) {
    auto* made = new QDoubleSpinBox;
    made->setRange(low, high);
    made->setDecimals(1);
    made->setSingleStep(step);
    made->setSuffix(" " + unit);
    made->setAccessibleName(name);
    return made;
}

}  // namespace

SetUpWizard::SetUpWizard(Instrument& instrument, int string_index, TakePlayer& player, QWidget* parent)
    : QWizard(parent),
      instrument_(&instrument),
      player_(&player),
      runner_(usual_threads()),
      base_(instrument.preset()),
      preset_(new QComboBox),
      name_(new QLineEdit),
      string_(new QComboBox),
      length_(box(50.0, 2000.0, 1.0, tr("mm"), tr("Length of the string"))),
      pitch_(box(300.0, 550.0, 1.0, tr("Hz"), tr("Pitch of A4"))),
      finger_(box(2.0, 40.0, 0.5, tr("mm"), tr("Width of a finger"))),
      hair_(box(1.0, 30.0, 0.5, tr("mm"), tr("Width of the hair"))) {
    setWindowTitle(tr("Set up my instrument"));
    setWizardStyle(QWizard::ModernStyle);
    setOption(QWizard::NoBackButtonOnStartPage);
    setPage(start, start_page());
    setPage(string, string_page());
    setPage(hand, hand_page());
    setPage(strokes, strokes_page());
    fill_strings();
    string_->setCurrentIndex(string_index);
    fill_values();
    connect(preset_, &QComboBox::currentIndexChanged, this, &SetUpWizard::take_preset);
    connect(string_, &QComboBox::currentIndexChanged, this, &SetUpWizard::fill_values);
    connect(this, &QWizard::currentIdChanged, this, [this](int page) {
        if (page == strokes) make_strokes();
    });
    connect(&runner_, &JobRunner::failed, this, [this](const QString& message) { waiting_->setText(message); });
    connect(player_, &TakePlayer::failed, waiting_, &QLabel::setText);
    connect(player_, &TakePlayer::failed, waiting_, &QLabel::show);
}

QWizardPage* SetUpWizard::start_page() {
    auto* page = new QWizardPage;
    page->setTitle(tr("Which instrument is nearest to yours?"));
    page->setSubTitle(tr("Its body, strings and rosin are taken over; what you can measure comes next."));
    preset_->addItem(tr("The one at hand: %1").arg(QString::fromStdString(base_->name)), QString());
    for (const ShippedPreset& shipped : shipped()) preset_->addItem(shipped.name, shipped.short_name);
    preset_->setAccessibleName(tr("Nearest instrument"));
    name_->setAccessibleName(tr("Name of your instrument"));
    auto* form = new QFormLayout(page);
    form->addRow(tr("&Nearest instrument"), preset_);
    form->addRow(tr("N&ame of yours"), name_);
    return page;
}

QWizardPage* SetUpWizard::string_page() {
    auto* page = new QWizardPage;
    page->setTitle(tr("Measure the string and its pitch"));
    page->setSubTitle(
        tr("Lay a rule along the string, from the edge of the nut to the middle of the bridge. The other strings are "
           "taken to be longer or shorter alike."));
    string_->setAccessibleName(tr("String that is measured"));
    auto* form = new QFormLayout(page);
    form->addRow(tr("&String measured"), string_);
    form->addRow(tr("&Length, nut to bridge"), length_);
    form->addRow(tr("&Pitch of A4, by a tuner"), pitch_);
    form->addRow(words(Words::strings_caution()));
    return page;
}

QWizardPage* SetUpWizard::hand_page() {
    auto* page = new QWizardPage;
    page->setTitle(tr("Measure your finger and the hair"));
    page->setSubTitle(
        tr("A finger's width is across the pad of the first finger as it lies on the string. The hair is measured "
           "across the ribbon, at the middle of the bow."));
    auto* form = new QFormLayout(page);
    form->addRow(tr("Width of a &finger"), finger_);
    form->addRow(tr("Width of the &hair"), hair_);
    return page;
}

QWizardPage* SetUpWizard::strokes_page() {
    auto* page = new QWizardPage;
    page->setTitle(tr("Which strokes do you like?"));
    page->setSubTitle(
        tr("The open string, bowed from light to firm. Tick two or more that could be yours: they become the range of "
           "forces. None ticked: the preset's range stays."));
    page->setFinalPage(true);
    strokes_ = new QVBoxLayout(page);
    strokes_->addWidget(words(Words::listening_caution()));
    waiting_ = words({});
    strokes_->addWidget(waiting_);
    return page;
}

void SetUpWizard::take_preset() {
    const QString name = preset_->currentData().toString();
    try {
        base_ = name.isEmpty() ? instrument_->preset()
                               : std::make_shared<const sim::Preset>(sim::find_preset(name.toStdString()));
    } catch (const std::exception& wrong) {
        QMessageBox::warning(this, windowTitle(), QString::fromUtf8(wrong.what()));
        return;
    }
    fill_strings();
    fill_values();
}

void SetUpWizard::fill_strings() {
    const QSignalBlocker quiet(string_);
    string_->clear();
    for (const sim::PresetString& one : base_->strings)
        string_->addItem(tr("%1 (%2)").arg(QString::fromStdString(one.name), QString::fromStdString(one.pitch)));
}

void SetUpWizard::fill_values() {
    const SetUp now = set_up_of(*base_, std::max(0, string_->currentIndex()));
    name_->setText(now.name);
    length_->setValue(now.length_mm);
    pitch_->setValue(now.reference_pitch_hz);
    finger_->setValue(now.finger_width_mm);
    hair_->setValue(now.hair_width_mm);
}

SetUp SetUpWizard::wanted() const {
    SetUp wanted = set_up_of(*base_, std::max(0, string_->currentIndex()));
    wanted.name = name_->text().trimmed();
    wanted.length_mm = length_->value();
    wanted.reference_pitch_hz = pitch_->value();
    wanted.finger_width_mm = finger_->value();
    wanted.hair_width_mm = hair_->value();
    std::vector<double> forces;
    for (const Liked& stroke : liked_)
        if (stroke.box->isChecked()) forces.push_back(stroke.force);
    if (const auto range = liked_forces(forces)) {
        wanted.lightest = range->lightest;
        wanted.firmest = range->firmest;
    }
    return wanted;
}

void SetUpWizard::make_strokes() {
    for (const Liked& stroke : liked_) delete stroke.box->parentWidget();
    liked_.clear();
    waiting_->setText(tr("Bowing the strokes …"));
    waiting_->show();
    try {
        const sim::Preset preset = set_up(*base_, wanted());
        runner_.ask(
            [this, preset, string = string_->currentIndex()](const sim::Workers& workers) -> JobRunner::Delivery {
                auto made = std::make_shared<const std::vector<StrokeToLike>>(strokes_to_like(preset, string, workers));
                return [this, made] { show_strokes(*made); };
            });
    } catch (const std::exception& wrong) {
        waiting_->setText(QString::fromUtf8(wrong.what()));
    }
}

void SetUpWizard::show_strokes(const std::vector<StrokeToLike>& made) {
    waiting_->hide();
    const ScreenText text;
    for (const StrokeToLike& stroke : made) {
        auto* row = new QWidget;
        auto* columns = new QHBoxLayout(row);
        columns->setContentsMargins(0, 0, 0, 0);
        auto* like = new QCheckBox(tr("I like it: %1").arg(text.newtons(stroke.force)));
        auto* hear = new QPushButton(tr("Hear"));
        hear->setAccessibleName(tr("Hear the stroke of %1").arg(text.newtons(stroke.force)));
        connect(hear, &QPushButton::clicked, this, [this, sound = stroke.sound] { player_->play(sound); });
        columns->addWidget(hear);
        columns->addWidget(like, 1);
        strokes_->addWidget(row);
        liked_.push_back({like, stroke.force});
    }
}

void SetUpWizard::accept() {
    player_->stop();
    try {
        instrument_->change(set_up(*base_, wanted()), tr("set up my instrument"));
        instrument_->forget_file();  // the one that was opened must not be written over
    } catch (const std::exception& wrong) {
        QMessageBox::warning(this, windowTitle(), QString::fromUtf8(wrong.what()));
        return;
    }
    QWizard::accept();
}

}  // namespace gui
