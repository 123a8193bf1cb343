// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/job.hpp"

#include <QMetaObject>

#include <algorithm>
#include <exception>

#ifdef __linux__
#include <sys/resource.h>
#endif

namespace gui {
namespace {

constexpr double least_progress = 0.005;  // between two tellings

/// Work gives way to the window and to live sound.  On Linux this is a thread's own, and handed on to its helpers.
void step_back() {
#ifdef __linux__
    constexpr int niceness = 5;
    setpriority(PRIO_PROCESS, 0, niceness);
#endif
}

}  // namespace

int usual_threads() { return static_cast<int>(std::max(1U, std::thread::hardware_concurrency())); }

JobRunner::JobRunner(int threads, QObject* parent)
    : QObject(parent), threads_(threads), thread_([this](const std::stop_token& ended) { work_on(ended); }) {}

JobRunner::~JobRunner() {
    give_up();
    thread_.request_stop();
    wake_.notify_all();
    thread_.join();
}

void JobRunner::ask(Work work, Superseded superseded) {
    const bool idle = running_ == 0;
    {
        const std::scoped_lock lock(guard_);
        if (waiting_) --running_;  // it will never run
        waiting_ = Piece{std::move(work), superseded, ++newest_};
        if (running_superseded_ == Superseded::stops) stop_.request_stop();
    }
    ++running_;
    wake_.notify_all();
    if (idle) emit busy_changed(true);
}

void JobRunner::stop() {
    if (give_up()) emit busy_changed(false);
}

/// Also of a piece that has not begun: the source of its stop token is made only when it does.
bool JobRunner::give_up() {
    const std::scoped_lock lock(guard_);
    cancelled_ = newest_;
    stop_.request_stop();
    if (!waiting_) return false;
    waiting_.reset();
    return --running_ == 0;
}

bool JobRunner::waiting() const {
    const std::scoped_lock lock(guard_);
    return waiting_.has_value();
}

void JobRunner::work_on(const std::stop_token& ended) {
    step_back();
    while (!ended.stop_requested()) {
        std::unique_lock lock(guard_);
        if (!wake_.wait(lock, ended, [this] { return waiting_.has_value(); })) return;
        Piece piece = std::move(*waiting_);
        waiting_.reset();
        stop_ = std::stop_source();
        running_superseded_ = piece.superseded;
        lock.unlock();
        run(std::move(piece));
    }
}

void JobRunner::run(Piece piece) {
    sim::Workers workers{.threads = threads_};
    {
        const std::scoped_lock lock(guard_);
        workers.stop = stop_.get_token();
    }
    const int number = piece.number;
    double told = 0.0;
    workers.progress = [this, number, &told](double share) {
        if (share < 1.0 && share - told < least_progress) return;
        told = share;
        tell_progress(number, share);
    };
    Delivery delivery;
    QString message;
    try {
        delivery = piece.work(workers);
    } catch (const sim::Stopped&) {
        delivery = {};
    } catch (const std::exception& wrong) {
        message = QString::fromUtf8(wrong.what());
    }
    QMetaObject::invokeMethod(
        this,
        [this, piece = std::move(piece), delivery = std::move(delivery), message] {
            if (delivery) deliver(piece, delivery);
            if (!message.isEmpty() && piece.number > cancelled_) emit failed(message);
            finish();
        },
        Qt::QueuedConnection);
}

void JobRunner::deliver(const Piece& piece, const Delivery& delivery) {
    const bool late = piece.superseded == Superseded::stops && piece.number != newest_;
    if (piece.number > cancelled_ && !late) delivery();
}

void JobRunner::tell_progress(int number, double share) {
    QMetaObject::invokeMethod(
        this,
        [this, number, share] {
            if (number == newest_ && number > cancelled_) emit progress(share);
        },
        Qt::QueuedConnection);
}

void JobRunner::finish() {
    if (--running_ == 0) emit busy_changed(false);
}

}  // namespace gui
