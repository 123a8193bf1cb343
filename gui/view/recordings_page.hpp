// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/job.hpp"
#include "gui/model/match_answer.hpp"
#include "gui/model/matched_notes.hpp"
#include "gui/model/recorded_notes.hpp"
#include "gui/view/chart_view.hpp"
#include "gui/view/page.hpp"

class QComboBox;
class QLabel;
class QLayout;
class QProgressBar;
class QPushButton;
class QStackedLayout;
class QTableView;

namespace gui {

class ListeningPanel;

/// What a recording says, where the bow was on its notes, and what the microphone hears.
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

    /// Looks for the bow in the recording that is shown; each note is shown when it is done.
    void find_bow();
    /// Empty until the bow was looked for in this recording.
    const MatchAnswerPointer& match() const { return match_; }
    /// How finely it is looked for; as the command does unless told otherwise.
    void set_match_grid(const sim::match::SpectraGrid& grid) { grid_ = grid; }

private:
    QLayout* sources();
    QLayout* bow_row();
    QWidget* results();
    void wire();
    void wire_bow();
    void ask_open();
    void work(const QString& failure, JobRunner::Work work);
    void show_answer(const RecordingAnswerPointer& answer);
    void take_match(const MatchAnswerPointer& match);
    void tell_places();
    void fill_shown();
    /// The note that is shown; none while the recording as a whole is.
    std::optional<std::size_t> note_shown() const;
    void show_chosen();
    void show_recording();
    void show_note(std::size_t note);
    Export match_chart() const;

    Desk* desk_;
    JobRunner runner_;
    QString failure_;  ///< heading of the message, should the work at hand fail
    RecordingAnswerPointer answer_;
    MatchAnswerPointer match_;
    sim::match::SpectraGrid grid_;
    RecordedNotes* notes_;
    MatchedNotes* matched_;
    QLabel* words_;
    QPushButton* find_;
    QComboBox* where_;
    QComboBox* shown_;
    QPushButton* as_table_;
    QPushButton* cancel_;
    QProgressBar* progress_;
    QStackedLayout* below_;
    ChartView* chart_;
    QTableView* matched_table_;
    ListeningPanel* listening_;
};

}  // namespace gui
