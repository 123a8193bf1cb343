// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/screen_text.hpp"
#include "gui/model/strings_study.hpp"

#include <QAbstractTableModel>

namespace gui {

/// Strings side by side: for each stop its band first, then what the string is.
class GaugesTable : public QAbstractTableModel {
    Q_OBJECT

public:
    /// Of each stop, after the gauge's own column.
    enum StopColumn { band, best, security, forgiveness, brightness, least_force, stop_column_count };
    /// After all stops.
    enum StringColumn { pull, set_pull, impedance, inharmonicity, ringing, breaking, cautions, string_column_count };

    explicit GaugesTable(const ScreenText& text = ScreenText(), QObject* parent = nullptr);

    void set_answer(StringsAnswerPointer answer);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;

private:
    int stop_columns() const;
    QString name(const sim::GaugeRow& row) const;
    QString of_stop(const sim::ClimbStop& stop, int column) const;
    QString of_string(const sim::GaugeRow& row, int column) const;

    ScreenText text_;
    StringsAnswerPointer answer_;
};

}  // namespace gui
