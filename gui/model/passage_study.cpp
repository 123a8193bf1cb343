// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/passage_study.hpp"

#include "gui/model/selection.hpp"

namespace gui {

PassageStudy::PassageStudy(const Selection& selection, int threads, QObject* parent)
    : Study(selection, threads, parent) {
    connect(&selection, &Selection::instrument_changed, this, [this, &selection] {
        if (!answer_ || answer_->asked.run.preset != *selection.preset()) outdate();
    });
    connect(&selection, &Selection::stroke_changed, this, [this, &selection] {
        if (answer_ && answer_->wrong.empty() && answer_->asked.preset.player.speed != selection.speed()) outdate();
    });
}

void PassageStudy::set_tune(const QString& tune) {
    if (tune.trimmed().isEmpty() || tune == tune_) return;
    tune_ = tune;
    outdate();
}

JobRunner::Work PassageStudy::work(NoteQuestion question, Fineness fineness) {
    return [this, question = std::move(question), fineness,
            tune = tune_.toStdString()](const sim::Workers& workers) -> JobRunner::Delivery {
        auto answer = std::make_shared<const PassageAnswer>(passage_answer(question, tune, fineness, workers));
        return [this, answer] { answer_ = answer; };
    };
}

}  // namespace gui
