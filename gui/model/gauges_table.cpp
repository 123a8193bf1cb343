// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/gauges_table.hpp"

#include "sim/report/tone_values.hpp"
#include "sim/window.hpp"

namespace gui {

GaugesTable::GaugesTable(const ScreenText& text, QObject* parent) : QAbstractTableModel(parent), text_(text) {}

void GaugesTable::set_answer(StringsAnswerPointer answer) {
    beginResetModel();
    answer_ = std::move(answer);
    endResetModel();
}

int GaugesTable::stop_columns() const {
    return answer_ ? static_cast<int>(answer_->study.stops.size()) * stop_column_count : 0;
}

int GaugesTable::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !answer_ ? 0 : static_cast<int>(answer_->study.rows.size());
}

int GaugesTable::columnCount(const QModelIndex& parent) const {
    return parent.isValid() || !answer_ ? 0 : 1 + stop_columns() + string_column_count;
}

QVariant GaugesTable::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole || section < 0 || section >= columnCount()) return {};
    if (section == 0) return tr("String");
    const int column = section - 1;
    if (column < stop_columns()) {
        const QStringList names{tr("band, mm"),     tr("best, mm"),       tr("secure"),
                                tr("forgives, dB"), tr("brightness, f0"), tr("least force, N")};
        const double stop = answer_->study.stops[static_cast<std::size_t>(column / stop_column_count)];
        return tr("%1: %2").arg(text_.stop(stop), names[column % stop_column_count]);
    }
    const QStringList names{tr("Pull, N"), tr("All strings, N"), tr("Impedance, kg/s"), tr("Inharmonicity, 1e-5"),
                            tr("Q"),       tr("f L, Hz m"),      tr("To mind")};
    return names[column - stop_columns()];
}

QString GaugesTable::name(const sim::GaugeRow& row) const {
    const QString gauge = QString::fromStdString(sim::gauge_words(row.string.gauge));
    if (answer_->study.whole_set)
        return QString::fromStdString(row.string.name + " " + row.string.pitch + ", ") + gauge;
    return row.present ? tr("now: %1").arg(gauge) : gauge;
}

QString GaugesTable::of_stop(const sim::ClimbStop& stop, int column) const {
    const bool speaks = stop.speaking && stop.speaking->main;
    switch (column) {
        case band:
            return QString::fromStdString(sim::report::band_or_stretch(stop.band));
        case best:
            return stop.band.best ? text_.mm_number(*stop.band.best) : tr("none");
        case security:
            return text_.percent(stop.band.at_best.security);
        case forgiveness:
            return speaks ? text_.number(*sim::forgiveness(*stop.speaking), 1) : QString();
        case brightness: {
            const bool played = stop.follows && stop.follows->stroke;
            const auto bright = played ? sim::report::brightness_f0(*stop.follows->stroke) : std::nullopt;
            return bright ? text_.number(*bright, 1) : QString();
        }
        case least_force:
            return speaks ? text_.number(stop.speaking->intervals[*stop.speaking->main].low, 3) : QString();
        default:
            return {};
    }
}

QString GaugesTable::of_string(const sim::GaugeRow& row, int column) const {
    const double loss = sim::loss_factor(row.open, 1.0);
    const double reference = answer_->asked.preset.reference_pitch;
    switch (column) {
        case pull:
            return text_.number(row.open.tension, 1);
        case set_pull:
            return tr("%1 (%2 %)")
                .arg(text_.number(row.set_pull, 0),
                     text_.signed_number(100.0 * (row.set_pull / answer_->study.set_up_pull - 1.0), 1));
        case impedance:
            return text_.number(sim::wave_impedance(row.open), 3);
        case inharmonicity:
            return text_.number(1e5 * sim::inharmonicity(row.open), 1);
        case ringing:
            return loss > 0.0 ? text_.number(1.0 / loss, 0) : QString();
        case breaking:
            return row.to_likely_break ? text_.number(sim::breaking_product(row.string, reference), 0) : QString();
        case cautions:
            return QString::fromStdString(sim::report::row_cautions(answer_->study, row, reference));
        default:
            return {};
    }
}

QVariant GaugesTable::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const sim::GaugeRow& row = answer_->study.rows[static_cast<std::size_t>(index.row())];
    const int column = index.column() - 1;
    const bool of_a_stop = column >= 0 && column < stop_columns();
    if (role == Qt::TextAlignmentRole && column >= 0 && column - stop_columns() != cautions)
        return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    if (role != Qt::DisplayRole) return {};
    if (column < 0) return name(row);
    if (!of_a_stop) return of_string(row, column - stop_columns());
    return of_stop(row.stops[static_cast<std::size_t>(column / stop_column_count)], column % stop_column_count);
}

}  // namespace gui
