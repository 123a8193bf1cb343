// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/job.hpp"
#include "gui/model/recorded_notes.hpp"
#include "gui/view/chart_view.hpp"
#include "gui/view/page.hpp"

class QLabel;
class QLayout;
class QProgressBar;
class QPushButton;
class QStackedLayout;

namespace gui {

class ListeningPanel;

/// What a recording says, and what the microphone hears.
class RecordingsPage : public Page {
    Q_OBJECT

public:
    explicit RecordingsPage(Desk& desk, QWidget* parent = nullptr);

    QString title() const override { return tr("&Recordings"); }
    QString purpose() const override;
    void set_looked_at(bool looked_at) override;
    std::vector<Export> exports() const override;
    bool can_print() const override { return chart_->has_chart(); }
    void print(QPrinter& printer) const override { chart_->print(printer); }

    /// Analyses the file; what it says is shown when it is done.
    void open(const QString& file);
    const RecordingAnswerPointer& answer() const { return answer_; }
    ListeningPanel& listening() { return *listening_; }

private:
    QLayout* sources();
    QWidget* results();
    void wire();
    void ask_open();
    void show_answer(const RecordingAnswerPointer& answer);

    Desk* desk_;
    JobRunner runner_;
    RecordingAnswerPointer answer_;
    RecordedNotes* notes_;
    QLabel* words_;
    QPushButton* as_table_;
    QPushButton* cancel_;
    QProgressBar* progress_;
    QStackedLayout* below_;
    ChartView* chart_;
    ListeningPanel* listening_;
};

}  // namespace gui
