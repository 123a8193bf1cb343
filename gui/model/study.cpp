// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/study.hpp"

#include "gui/model/selection.hpp"

namespace gui {
namespace {

constexpr int rest_ms = 250;  // the hand has come to rest

}  // namespace

Study::Study(const Selection& selection, int threads, QObject* parent)
    : QObject(parent), selection_(&selection), runner_(threads) {
    rest_.setSingleShot(true);
    rest_.setInterval(rest_ms);
    connect(&rest_, &QTimer::timeout, this, qOverload<>(&Study::launch));
    connect(&runner_, &JobRunner::progress, this, &Study::progress);
    connect(&runner_, &JobRunner::busy_changed, this, &Study::working_changed);
    connect(&runner_, &JobRunner::failed, this, &Study::failed);
}

void Study::set_watched(bool watched) {
    if (watched == watched_) return;
    watched_ = watched;
    if (!watched) {
        rest_.stop();
        runner_.stop();
    } else if (state_ != State::fine) {
        rest_.start();
    }
}

void Study::outdate() {
    state_ = State::outdated;
    runner_.stop();
    emit outdated();
    if (watched_) rest_.start();
}

void Study::launch() { launch(state_ == State::coarse ? Fineness::fine : Fineness::coarse); }

void Study::launch(Fineness fineness) {
    runner_.ask([this, fineness, task = work(note_question(*selection_), fineness)](
                    const sim::Workers& workers) -> JobRunner::Delivery {
        const JobRunner::Delivery hand_over = task(workers);
        return [this, fineness, hand_over] {
            hand_over();
            state_ = fineness == Fineness::fine ? State::fine : State::coarse;
            emit found();
            if (fineness == Fineness::coarse) launch(Fineness::fine);
        };
    });
}

ClimbStudy::ClimbStudy(const Selection& selection, int threads, QObject* parent) : Study(selection, threads, parent) {
    connect(&selection, &Selection::instrument_changed, this, &Study::outdate);
    connect(&selection, &Selection::stroke_changed, this, [this, &selection] {
        if (answer_ && answer_->climb.player.speed != selection.speed()) outdate();
    });
}

JobRunner::Work ClimbStudy::work(NoteQuestion question, Fineness fineness) {
    return [this, question = std::move(question), fineness](const sim::Workers& workers) -> JobRunner::Delivery {
        auto answer = std::make_shared<const ClimbAnswer>(climb_answer(question, fineness, workers));
        return [this, answer] { answer_ = answer; };
    };
}

WindowStudy::WindowStudy(const Selection& selection, int threads, QObject* parent) : Study(selection, threads, parent) {
    connect(&selection, &Selection::note_changed, this, &Study::outdate);
}

JobRunner::Work WindowStudy::work(NoteQuestion question, Fineness fineness) {
    return [this, question = std::move(question), fineness](const sim::Workers& workers) -> JobRunner::Delivery {
        auto answer = std::make_shared<const WindowAnswer>(window_answer(question, fineness, workers));
        return [this, answer] { answer_ = answer; };
    };
}

}  // namespace gui
