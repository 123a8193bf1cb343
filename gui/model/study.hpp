// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/answers.hpp"
#include "gui/model/job.hpp"

#include <QTimer>

namespace gui {

/// A longer piece of work on the selection, for a page: done only while the page is looked at, once the hand has come
/// to rest, coarsely first and then in full.
class Study : public QObject {
    Q_OBJECT

public:
    Study(const Selection& selection, int threads, QObject* parent = nullptr);

    /// Is the answer at hand the full one, of the selection as it is?
    bool up_to_date() const { return state_ == State::fine; }
    bool working() const { return runner_.busy(); }

public slots:
    /// Whether somebody looks.  Nobody: what runs is given up.
    void set_watched(bool watched);
    /// The answer no longer fits the selection.
    void outdate();

signals:
    void found();  ///< coarse or full
    void progress(double share);
    void working_changed(bool working);
    void outdated();
    void failed(const QString& message);

protected:
    /// A piece of work that leaves the answer where found() finds it.
    virtual JobRunner::Work work(NoteQuestion question, Fineness fineness) = 0;

private:
    enum class State { outdated, coarse, fine };
    void launch();
    void launch(Fineness fineness);

    const Selection* selection_;
    JobRunner runner_;
    QTimer rest_;
    State state_ = State::outdated;
    bool watched_ = false;
};

/// The climb of the selected string.
class ClimbStudy : public Study {
    Q_OBJECT

public:
    ClimbStudy(const Selection& selection, int threads, QObject* parent = nullptr);
    /// Empty before the first.
    const ClimbAnswerPointer& answer() const { return answer_; }

protected:
    JobRunner::Work work(NoteQuestion question, Fineness fineness) override;

private:
    ClimbAnswerPointer answer_;
};

/// The window of the selected note.
class WindowStudy : public Study {
    Q_OBJECT

public:
    WindowStudy(const Selection& selection, int threads, QObject* parent = nullptr);
    /// Empty before the first.
    const WindowAnswerPointer& answer() const { return answer_; }

protected:
    JobRunner::Work work(NoteQuestion question, Fineness fineness) override;

private:
    WindowAnswerPointer answer_;
};

}  // namespace gui
