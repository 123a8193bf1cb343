// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/line_table.hpp"

#include <QCoreApplication>
#include <QFontMetrics>
#include <QHeaderView>
#include <QPushButton>
#include <QTableView>

namespace gui {
namespace {

/// Words of this file, for the translator.
struct Words {
    Q_DECLARE_TR_FUNCTIONS(gui::LineTable)
};

}  // namespace

QTableView* line_table(QAbstractItemModel& model, const QString& name) {
    auto* table = new QTableView;
    table->setModel(&model);
    table->setAccessibleName(name);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setAlternatingRowColors(true);
    table->verticalHeader()->hide();
    table->verticalHeader()->setDefaultSectionSize(table->fontMetrics().height() + 8);
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table->setTabKeyNavigation(false);
    return table;
}

QPushButton* table_button(const QString& tip) {
    auto* button = new QPushButton(Words::tr("&As a table"));
    button->setCheckable(true);
    button->setToolTip(tip);
    QObject::connect(button, &QPushButton::toggled, button,
                     [button](bool on) { button->setText(on ? Words::tr("&As a chart") : Words::tr("&As a table")); });
    return button;
}

}  // namespace gui
