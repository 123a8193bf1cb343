// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/preset_table.hpp"
#include "gui/view/page.hpp"

class QComboBox;
class QLabel;
class QSortFilterProxyModel;
class QTableView;

namespace gui {

/// The instrument's values in a table, and the way to an own one.
class InstrumentPage : public Page {
    Q_OBJECT

public:
    explicit InstrumentPage(Desk& desk, QWidget* parent = nullptr);

    QString title() const override { return tr("&My instrument"); }
    QString purpose() const override;
    std::vector<Export> exports() const override;

private:
    QWidget* top();
    QTableView* table();
    void fill_parts();
    void show_part(const QString& part);
    void set_up();

    Desk* desk_;
    PresetTable* values_;
    QSortFilterProxyModel* shown_;
    QComboBox* part_;
};

}  // namespace gui
