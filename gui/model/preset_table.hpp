// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/instrument.hpp"

#include <QAbstractTableModel>
#include <QLocale>

#include <vector>

namespace gui {

/// Every value of the instrument in a row: part, what, value, unit, range, source.  Values and sources can be edited;
/// numbers are written and read as the user's locale has them.
class PresetTable : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { part, what, value, unit, range, source, column_count };

    explicit PresetTable(Instrument& instrument, const QLocale& locale = QLocale(), QObject* parent = nullptr);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

    const Field& field(int row) const { return fields_[static_cast<std::size_t>(row)]; }
    /// Names of the parts, in order.
    QStringList parts() const;

signals:
    /// What was typed is no number; nothing was changed.
    void refused(const QString& message);

private:
    void refresh();
    QString text(const Field& field, int column) const;
    QString value_text(const Field& field) const;
    QString range_text(const Field& field) const;
    bool set_value(const Field& field, const QString& text);

    Instrument* instrument_;
    QLocale locale_;
    std::vector<Field> fields_;
    std::unique_ptr<PresetValues> values_;
};

/// Source of a number that somebody typed, until they say better.
extern const char* const typed_source;

}  // namespace gui
