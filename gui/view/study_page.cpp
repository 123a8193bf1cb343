// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/study_page.hpp"

#include "gui/view/line_table.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedLayout>
#include <QTableView>
#include <QVBoxLayout>

namespace gui {
namespace {

constexpr int progress_steps = 1000;

}  // namespace

StudyPage::StudyPage(Study& study, QWidget* parent)
    : Page(parent),
      study_(&study),
      top_(new QHBoxLayout),
      below_(new QStackedLayout),
      words_(new QLabel),
      state_(new QLabel),
      progress_(new QProgressBar),
      chart_(new ChartView),
      paper_(new QScrollArea) {
    auto* rows = new QVBoxLayout(this);
    rows->addLayout(top_);
    rows->addLayout(below_, 1);
    words_->setWordWrap(true);
    words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    words_->setAccessibleName(tr("What it says"));
    progress_->setRange(0, progress_steps);
    progress_->setFixedWidth(160);
    progress_->setAccessibleName(tr("Progress of the simulation"));
    auto policy = progress_->sizePolicy();
    policy.setRetainSizeWhenHidden(true);
    progress_->setSizePolicy(policy);
    top_->addWidget(words_, 1);
    top_->addWidget(state_);
    top_->addWidget(progress_);
    chart_->setAccessibleName(tr("Chart"));
    paper_->setWidget(chart_);
    paper_->setWidgetResizable(true);
    paper_->setFrameShape(QFrame::NoFrame);
    paper_->setFocusPolicy(Qt::NoFocus);  // the chart has it; keys that it has no use for scroll
    below_->addWidget(paper_);
    top_->addWidget(larger_button());
    connect(&study, &Study::found, this, &StudyPage::refresh);
    connect(&study, &Study::progress, this,
            [this](double share) { progress_->setValue(static_cast<int>(share * progress_steps)); });
    connect(&study, &Study::working_changed, this, &StudyPage::tell_state);
    connect(&study, &Study::outdated, this, &StudyPage::tell_state);
    progress_->hide();
}

QPushButton* StudyPage::larger_button() {
    auto* button = new QPushButton(tr("Lar&ger"));
    button->setCheckable(true);
    button->setToolTip(tr("The chart as wide as the window; scroll to see all of it."));
    connect(button, &QPushButton::toggled, this, &StudyPage::set_larger);
    return button;
}

void StudyPage::set_larger(bool larger) {
    const double shape = 2.0 / 3.0;  // of a chart
    chart_->setMinimumHeight(larger ? static_cast<int>(paper_->viewport()->width() * shape) : 0);
}

void StudyPage::add_beside(QWidget* widget) { top_->addWidget(widget); }

QTableView* StudyPage::add_table(QAbstractItemModel& model, const QString& name, const QString& tip) {
    QTableView* table = line_table(model, name);
    below_->addWidget(table);
    QPushButton* as_table = table_button(tip);
    add_beside(as_table);
    connect(as_table, &QPushButton::toggled, this, [this](bool on) { below_->setCurrentIndex(on ? 1 : 0); });
    return table;
}

void StudyPage::set_looked_at(bool looked_at) {
    looked_at_ = looked_at;
    study_->set_watched(looked_at);
    if (looked_at && !fresh_) refresh();
}

void StudyPage::refresh() {
    fresh_ = looked_at_;
    if (!looked_at_ || !has_answer()) return;
    const Shown now = shown();
    words_->setText(now.words);
    chart_->set_chart(now.chart, now.words);
    tell_state();
}

void StudyPage::tell_state() {
    progress_->setVisible(study_->working());
    if (study_->up_to_date())
        state_->clear();
    else
        state_->setText(has_answer() ? tr("being worked out anew …") : tr("being worked out …"));
}

Export StudyPage::chart_export(const QString& name, const QString& file_name) const {
    return {name, tr("Pictures (*.png *.svg *.pdf)"), file_name,
            [this](const std::filesystem::path& place) { charts::save_chart(chart_->chart(), place); }};
}

}  // namespace gui
