// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/hear_page.hpp"

#include "gui/view/bow_pad.hpp"
#include "gui/view/desk.hpp"
#include "gui/view/words.hpp"

#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QGroupBox>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QSlider>
#include <QVBoxLayout>

namespace gui {
namespace {

constexpr int first_volume = 15;  // %, low: it can always be turned up
constexpr int progress_steps = 1000;
constexpr int side_width = 360;  // px

QDoubleSpinBox* number_box(double step, int decimals, const QString& unit, const QString& name,
                           const QString& meaning) {
    auto* box = new QDoubleSpinBox;
    box->setDecimals(decimals);
    box->setSingleStep(step);
    box->setSuffix(" " + unit);
    box->setAccessibleName(name);
    box->setToolTip(meaning);
    box->setKeyboardTracking(false);
    return box;
}

}  // namespace

HearPage::HearPage(Desk& desk, QWidget* parent)
    : Page(parent),
      desk_(&desk),
      runner_(usual_threads()),
      pad_(new BowPad(desk.selection, desk.bands, desk.guide)),
      bow_on_(new QPushButton(tr("Bow on the string  (B)"))),
      follows_(new QPushButton(tr("Bow follows the finger  (F)"))),
      motion_(new QLabel),
      heard_(new QLabel),
      place_(number_box(1.0, 1, tr("mm"), tr("Contact point"),
                        tr("Contact point: where the hair touches the string, from the bridge."))),
      force_(number_box(0.01, 3, tr("N"), tr("Bow force"),
                        tr("Bow force: how firmly the hair presses; 1 N is the weight of about 100 g."))),
      speed_(number_box(0.01, 2, tr("m/s"), tr("Bow speed"),
                        tr("Bow speed: how fast the hair is drawn; a whole bow in three seconds is about 0.2 m/s."))),
      volume_(new QSlider(Qt::Horizontal)),
      stop_(new QPushButton(tr("Stop"))),
      progress_(new QProgressBar) {
    auto* columns = new QHBoxLayout(this);
    columns->addWidget(pad_, 1);
    auto* side = new QWidget;
    side->setFixedWidth(side_width);
    auto* rows = new QVBoxLayout(side);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->addLayout(bowing());
    rows->addLayout(stroke_controls());
    rows->addLayout(takes());
    rows->addStretch(1);
    columns->addWidget(side);
    wire();
    show_stroke();
    show_silence();
    keep_volume(first_volume);
}

QString HearPage::purpose() const {
    return tr(
        "Bow by hand and hear the tone fail and come back; or listen to takes with the bow left behind and with the "
        "bow following.");
}

QLayout* HearPage::bowing() {
    auto* rows = new QVBoxLayout;
    bow_on_->setCheckable(true);
    bow_on_->setToolTip(tr("Puts the bow on the string or takes it off. Key B."));
    follows_->setCheckable(true);
    follows_->setToolTip(
        tr("On: the bow moves to the best contact point of each note. Off: it is left behind where it is. Key F."));
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() * 1.25);
    large.setBold(true);
    motion_->setFont(large);
    motion_->setAccessibleName(tr("Motion of the string"));
    motion_->setToolTip(
        tr("What the string does under the bow. In Helmholtz motion a corner runs round the string once a period: the "
           "tone sings."));
    motion_->setWordWrap(true);
    motion_->setMinimumHeight(2 * QFontMetrics(large).height());
    heard_->setAccessibleName(tr("What is heard"));
    auto* caution = new QLabel(Words::listening_caution());
    caution->setWordWrap(true);
    caution->setAccessibleName(tr("Caution"));
    volume_->setRange(0, 100);
    volume_->setAccessibleName(tr("Volume"));
    auto* volume_name = new QLabel(tr("Vo&lume"));
    volume_name->setBuddy(volume_);
    auto* volume_row = new QHBoxLayout;
    volume_row->addWidget(volume_name);
    volume_row->addWidget(volume_);
    rows->addWidget(bow_on_);
    rows->addWidget(follows_);
    rows->addLayout(volume_row);
    rows->addWidget(caution);
    rows->addWidget(motion_);
    rows->addWidget(heard_);
    return rows;
}

QLayout* HearPage::stroke_controls() {
    auto* form = new QFormLayout;
    form->addRow(tr("Contact &point"), place_);
    form->addRow(tr("Bow f&orce"), force_);
    form->addRow(tr("Bow &speed"), speed_);
    speed_->setRange(slowest_bow, fastest_bow);
    return form;
}

QLayout* HearPage::takes() {
    auto* grid = new QGridLayout;
    grid->addWidget(new QLabel(tr("Takes to compare, at one volume:")), 0, 0, 1, 2);
    const auto button = [&](const QString& words, const QString& meaning, Take take, int row, int column) {
        auto* made = new QPushButton(words);
        made->setToolTip(meaning);
        connect(made, &QPushButton::clicked, this, [this, take] { play(take); });
        grid->addWidget(made, row, column);
    };
    button(tr("Note, left behind"), tr("This note with the bow where it is now."), Take::note_left_behind, 1, 0);
    button(tr("Note, bow follows"), tr("This note with the bow at its best contact point."), Take::note_follows, 1, 1);
    button(tr("Climb, left behind"), tr("All stops, the bow staying where it suited the open string."),
           Take::climb_left_behind, 2, 0);
    button(tr("Climb, bow follows"), tr("All stops, the bow at the best contact point of each."), Take::climb_follows,
           2, 1);
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    stop_->setEnabled(false);
    progress_->setRange(0, progress_steps);
    progress_->setAccessibleName(tr("Progress of the takes"));
    auto policy = progress_->sizePolicy();
    policy.setRetainSizeWhenHidden(true);
    progress_->setSizePolicy(policy);
    progress_->hide();
    grid->addWidget(stop_, 3, 0);
    grid->addWidget(progress_, 3, 1);
    return grid;
}

void HearPage::wire() {
    connect(bow_on_, &QPushButton::toggled, desk_, &Desk::play_live);
    connect(&desk_->live, &LiveBow::sounding_changed, bow_on_, &QPushButton::setChecked);
    connect(&desk_->live, &LiveBow::sounding_changed, this, [this](bool sounding) {
        if (!sounding) show_silence();
    });
    connect(&desk_->live, &LiveBow::failed, this, [this] { bow_on_->setChecked(false); });
    connect(&desk_->live, &LiveBow::heard, this, &HearPage::show_hearing);
    connect(follows_, &QPushButton::clicked, &desk_->guide, &BowGuide::change_way);
    connect(&desk_->selection, &Selection::bow_way_changed, this,
            [this](BowWay way) { follows_->setChecked(way == BowWay::follows); });
    connect(&desk_->selection, &Selection::stroke_changed, this, &HearPage::show_stroke);
    connect(&desk_->selection, &Selection::stop_changed, this, &HearPage::show_stroke);
    const auto by_hand = [this](auto act) {
        return [this, act](double value) {
            if (!showing_) act(value);
        };
    };
    connect(place_, &QDoubleSpinBox::valueChanged, this,
            by_hand([this](double mm) { desk_->guide.put_by_hand(metres_typed(mm)); }));
    connect(force_, &QDoubleSpinBox::valueChanged, this, by_hand([this](double n) { desk_->selection.set_force(n); }));
    connect(speed_, &QDoubleSpinBox::valueChanged, this, by_hand([this](double v) { desk_->selection.set_speed(v); }));
    connect(volume_, &QSlider::valueChanged, this, &HearPage::keep_volume);
    connect(stop_, &QPushButton::clicked, &desk_->takes, &TakePlayer::stop);
    connect(&desk_->takes, &TakePlayer::playing_changed, stop_, &QWidget::setEnabled);
    connect(&runner_, &JobRunner::busy_changed, progress_, &QWidget::setVisible);
    connect(&runner_, &JobRunner::progress, this,
            [this](double share) { progress_->setValue(static_cast<int>(share * progress_steps)); });
    connect(&runner_, &JobRunner::failed, this,
            [this](const QString& message) { emit desk_->wrong(tr("Takes"), message); });
    // takes of what was before would be heard for what is now
    const auto forget_note = [this] { note_pair_.reset(); };
    connect(&desk_->selection, &Selection::note_changed, this, forget_note);
    connect(&desk_->selection, &Selection::stroke_changed, this, forget_note);
    connect(&desk_->selection, &Selection::instrument_changed, this, [this] { climb_pair_.reset(); });
}

void HearPage::show_stroke() {
    const Selection& now = desk_->selection;
    showing_ = true;
    place_->setRange(shown_mm(now.floor()), shown_mm(now.farthest()));
    place_->setValue(shown_mm(now.contact()));
    force_->setRange(now.lightest(), now.firmest());
    force_->setValue(now.force());
    speed_->setValue(now.speed());
    showing_ = false;
}

void HearPage::keep_volume(int percent) {
    const double share = percent / 100.0;
    volume_->setValue(percent);
    volume_->setToolTip(text_.percent(share));
    desk_->live.set_volume(share);
    desk_->takes.set_volume(share);
}

}  // namespace gui
