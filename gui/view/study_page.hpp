// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/study.hpp"
#include "gui/view/chart_view.hpp"
#include "gui/view/page.hpp"

class QHBoxLayout;
class QLabel;
class QProgressBar;
class QPushButton;
class QScrollArea;
class QStackedLayout;

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
    /// Another way to show the same answer.
    void add_below(QWidget* widget);
    void show_below(int index);
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
