// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

class QAbstractItemModel;
class QPushButton;
class QTableView;

namespace gui {

/// A table to read line by line, under a name for screen readers; Tab leaves it.
QTableView* line_table(QAbstractItemModel& model, const QString& name);

/// A button that stays down while the table is shown, and then offers the chart.
QPushButton* table_button(const QString& tip);

}  // namespace gui
