// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/study.hpp"
#include "gui/view/chart_view.hpp"
#include "gui/view/page.hpp"

class QAbstractItemModel;
class QHBoxLayout;
class QLabel;
class QProgressBar;
class QPushButton;
class QScrollArea;
class QStackedLayout;
class QTableView;

namespace gui {

/// A page that shows one study: its words on top with the progress, its chart below.
class StudyPage : public Page {
    Q_OBJECT

public:
    StudyPage(Study& study, QWidget* parent = nullptr);

    void set_looked_at(bool looked_at) override;
    bool can_print() const override { return chart_->has_chart(); }
    void print(QPrinter& printer) const override { chart_->print(printer); }
    const ChartView& chart() const { return *chart_; }

protected:
    /// The chart of the answer at hand, and what it says in words.
    struct Shown {
        charts::Chart chart;
        QString words;
    };
    virtual Shown shown() const = 0;
    virtual bool has_answer() const = 0;
    /// Beside the words.
    void add_beside(QWidget* widget);
    /// The same answer line by line, in the chart's place while its button is down.
    QTableView* add_table(QAbstractItemModel& model, const QString& name, const QString& tip);
    /// "Chart of …" into a file.
    Export chart_export(const QString& name, const QString& file_name) const;

private:
    void refresh();
    void tell_state();
    QPushButton* larger_button();
    void set_larger(bool larger);

    Study* study_;
    QHBoxLayout* top_;
    QStackedLayout* below_;
    QLabel* words_;
    QLabel* state_;
    QProgressBar* progress_;
    ChartView* chart_;
    QScrollArea* paper_;
    bool looked_at_ = false;
    bool fresh_ = false;
};

}  // namespace gui
