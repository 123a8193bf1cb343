// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/preset_table.hpp"

#include <algorithm>
#include <cmath>

namespace gui {

const char* const typed_source = "invented: set by hand";

PresetTable::PresetTable(Instrument& instrument, const QLocale& locale, QObject* parent)
    : QAbstractTableModel(parent), instrument_(&instrument), locale_(locale) {
    locale_.setNumberOptions(QLocale::OmitGroupSeparator);
    fields_ = preset_fields(*instrument.preset());
    values_ = std::make_unique<PresetValues>(*instrument.preset());
    connect(&instrument, &Instrument::changed, this, &PresetTable::refresh);
}

void PresetTable::refresh() {
    std::vector<Field> fields = preset_fields(*instrument_->preset());
    const bool same = std::ranges::equal(fields, fields_, {}, &Field::pointer, &Field::pointer);
    if (!same) beginResetModel();
    fields_ = std::move(fields);
    values_ = std::make_unique<PresetValues>(*instrument_->preset());
    if (!same)
        endResetModel();
    else
        emit dataChanged(index(0, 0), index(rowCount() - 1, column_count - 1));
}

int PresetTable::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(fields_.size());
}

int PresetTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : column_count; }

QVariant PresetTable::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole || section < 0 || section >= column_count) return {};
    const QStringList names{tr("Part"), tr("What"), tr("Value"), tr("Unit"), tr("From … to"), tr("Source")};
    return names[section];
}

QStringList PresetTable::parts() const {
    QStringList parts;
    for (const Field& field : fields_)
        if (!parts.contains(field.part)) parts.append(field.part);
    return parts;
}

QString PresetTable::value_text(const Field& field) const {
    const std::optional<FieldValue> found = values_->value(field.pointer);
    if (!found) return {};
    if (const auto* words = std::get_if<QString>(&*found)) return *words;
    return locale_.toString(std::get<double>(*found), 'g', QLocale::FloatingPointShortest);
}

QString PresetTable::range_text(const Field& field) const {
    if (!field.range) return {};
    return tr("%1 … %2").arg(locale_.toString(field.range->low, 'g', 6), locale_.toString(field.range->high, 'g', 6));
}

QString PresetTable::text(const Field& field, int column) const {
    switch (column) {
        case part:
            return field.part;
        case what:
            return field.what;
        case value:
            return value_text(field);
        case unit:
            return field.unit;
        case range:
            return range_text(field);
        case source:
            return values_->source(field.pointer);
        default:
            return {};
    }
}

QVariant PresetTable::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const Field& shown = field(index.row());
    if (role == Qt::DisplayRole || role == Qt::EditRole) return text(shown, index.column());
    if (role == Qt::ToolTipRole) return index.column() == source ? text(shown, source) : shown.meaning;
    if (role == Qt::AccessibleTextRole && index.column() == value)
        return tr("%1, %2: %3 %4").arg(shown.part, shown.what, value_text(shown), shown.unit);
    if (role == Qt::TextAlignmentRole && index.column() == value && shown.range)
        return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    return {};
}

Qt::ItemFlags PresetTable::flags(const QModelIndex& index) const {
    const Qt::ItemFlags usual = QAbstractTableModel::flags(index);
    if (!index.isValid()) return usual;
    const bool can_edit = index.column() == value || (index.column() == source && field(index.row()).range);
    return can_edit ? usual | Qt::ItemIsEditable : usual;
}

bool PresetTable::setData(const QModelIndex& index, const QVariant& data, int role) {
    if (!index.isValid() || role != Qt::EditRole || !(flags(index) & Qt::ItemIsEditable)) return false;
    const Field shown = field(index.row());
    const QString typed = data.toString().trimmed();
    if (typed == text(shown, index.column())) return true;
    if (index.column() == value) return set_value(shown, typed);
    return instrument_->change({{shown.pointer, {}, typed}}, tr("source of %1, %2").arg(shown.part, shown.what));
}

bool PresetTable::set_value(const Field& field, const QString& text) {
    const QString named = tr("%1, %2").arg(field.part, field.what);
    if (!field.range) return instrument_->change({{field.pointer, FieldValue(text), {}}}, named);
    bool is_number = false;
    const double number = locale_.toDouble(text, &is_number);
    if (!is_number || number < field.range->low || number > field.range->high) {
        emit refused(tr("%1: must be a number from %2 %3, is \"%4\".").arg(named, range_text(field), field.unit, text));
        return false;
    }
    return instrument_->change({{field.pointer, FieldValue(number), QString::fromLatin1(typed_source)}}, named);
}

}  // namespace gui
