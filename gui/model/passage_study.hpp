// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/passage_answer.hpp"
#include "gui/model/study.hpp"

namespace gui {

/// A tune on the selected instrument.
class PassageStudy : public Study {
    Q_OBJECT

public:
    PassageStudy(const Selection& selection, int threads, QObject* parent = nullptr);
    /// Empty before the first.
    const PassageAnswerPointer& answer() const { return answer_; }
    const QString& tune() const { return tune_; }

public slots:
    /// A file, the name of a shipped tune or a line of notes.
    void set_tune(const QString& tune);

protected:
    JobRunner::Work work(NoteQuestion question, Fineness fineness) override;

private:
    QString tune_ = "bass_study";
    PassageAnswerPointer answer_;
};

}  // namespace gui
