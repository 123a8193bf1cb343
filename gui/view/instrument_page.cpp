// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/instrument_page.hpp"

#include "gui/view/desk.hpp"
#include "gui/view/set_up_wizard.hpp"
#include "gui/view/words.hpp"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QRegularExpression>
#include <QSortFilterProxyModel>
#include <QTableView>
#include <QVBoxLayout>

namespace gui {

InstrumentPage::InstrumentPage(Desk& desk, QWidget* parent)
    : Page(parent),
      desk_(&desk),
      values_(new PresetTable(desk.instrument, QLocale(), this)),
      shown_(new QSortFilterProxyModel(this)),
      part_(new QComboBox) {
    shown_->setSourceModel(values_);
    shown_->setFilterKeyColumn(PresetTable::part);
    auto* rows = new QVBoxLayout(this);
    rows->addWidget(top());
    rows->addWidget(table(), 1);
    auto* caution = new QLabel(Words::strings_caution());
    caution->setWordWrap(true);
    caution->setAccessibleName(tr("Caution"));
    rows->addWidget(caution);
    connect(values_, &PresetTable::refused, &desk.instrument, &Instrument::refused);
    connect(values_, &QAbstractItemModel::modelReset, this, &InstrumentPage::fill_parts);
    connect(part_, &QComboBox::currentTextChanged, this, &InstrumentPage::show_part);
    fill_parts();
}

QString InstrumentPage::purpose() const {
    return tr("Your own instrument: set it up step by step from one of the presets, or change any value in the table.");
}

QWidget* InstrumentPage::top() {
    auto* top = new QWidget;
    auto* row = new QHBoxLayout(top);
    row->setContentsMargins(0, 0, 0, 0);
    auto* set_up = new QPushButton(tr("Set &up my instrument …"));
    set_up->setToolTip(tr("Measure string, pitch, finger and hair, and choose the strokes you like; step by step."));
    connect(set_up, &QPushButton::clicked, this, &InstrumentPage::set_up);
    auto* name = new QLabel(tr("&Part shown"));
    name->setBuddy(part_);
    part_->setAccessibleName(tr("Part of the instrument shown"));
    part_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    row->addWidget(set_up);
    row->addSpacing(12);
    row->addWidget(name);
    row->addWidget(part_);
    row->addStretch(1);
    auto* hint = new QLabel(tr("Change a value by double click or F2; Ctrl+Z takes it back."));
    row->addWidget(hint);
    return top;
}

QTableView* InstrumentPage::table() {
    auto* view = new QTableView;
    view->setModel(shown_);
    view->setAccessibleName(tr("Values of the instrument"));
    view->setAlternatingRowColors(true);
    view->setTabKeyNavigation(false);
    view->verticalHeader()->hide();
    view->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
    view->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                          QAbstractItemView::AnyKeyPressed);
    QHeaderView* header = view->horizontalHeader();
    header->setSectionResizeMode(QHeaderView::ResizeToContents);
    header->setSectionResizeMode(PresetTable::source, QHeaderView::Stretch);
    return view;
}

void InstrumentPage::fill_parts() {
    const QString before = part_->currentText();
    part_->clear();
    part_->addItem(tr("Everything"));
    part_->addItems(values_->parts());
    part_->setCurrentIndex(std::max(0, part_->findText(before)));
}

void InstrumentPage::show_part(const QString& part) {
    shown_->setFilterRegularExpression(
        part_->currentIndex() <= 0
            ? QRegularExpression()
            : QRegularExpression(QRegularExpression::anchoredPattern(QRegularExpression::escape(part))));
}

void InstrumentPage::set_up() {
    SetUpWizard wizard(desk_->instrument, desk_->selection.string_index(), desk_->takes, this);
    if (wizard.exec() != QDialog::Accepted) return;
    emit desk_->done(tr("Your instrument is set up. Save it by File, Save."));
}

std::vector<Export> InstrumentPage::exports() const { return {preset_file(desk_->instrument.preset())}; }

}  // namespace gui
