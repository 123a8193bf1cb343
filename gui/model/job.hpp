// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/batch.hpp"

#include <QObject>
#include <QString>

#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

namespace gui {

/// Work away from the UI thread, one piece at a time; of those that wait only the newest is kept.
///
/// All members are called, all signals sent and all deliveries run in the thread the runner lives in.
class JobRunner : public QObject {
    Q_OBJECT

public:
    /// What a piece of work leaves to be done in the runner's own thread: handing over its result.
    using Delivery = std::function<void()>;
    /// Runs elsewhere; may throw InputError, OutputError and Stopped.
    using Work = std::function<Delivery(const sim::Workers&)>;
    /// What becomes of a piece that runs when a newer one is asked for.
    enum class Superseded { stops, finishes };

    explicit JobRunner(int threads, QObject* parent = nullptr);
    /// Stops what runs and waits for it.
    ~JobRunner() override;

    void ask(Work work, Superseded superseded = Superseded::stops);
    /// Nothing that was asked for so far is delivered any more.
    void stop();
    bool busy() const { return running_ > 0; }
    /// Is there a newer piece than the one being delivered?
    bool waiting() const;

signals:
    void busy_changed(bool busy);
    void progress(double share);  ///< 0 … 1 of the piece that runs
    void failed(const QString& message);

private:
    struct Piece {
        Work work;
        Superseded superseded = Superseded::stops;
        int number = 0;
    };

    /// Whether nothing is left to be done.
    bool give_up();
    void work_on(const std::stop_token& ended);
    void run(Piece piece);
    void deliver(const Piece& piece, const Delivery& delivery);
    void tell_progress(int number, double share);
    void finish();

    int threads_;
    int newest_ = 0;
    int cancelled_ = 0;  ///< pieces up to this number are not delivered
    int running_ = 0;
    mutable std::mutex guard_;  ///< guards waiting_, stop_, running_superseded_
    std::condition_variable_any wake_;
    std::optional<Piece> waiting_;
    std::stop_source stop_;
    Superseded running_superseded_ = Superseded::stops;
    std::jthread thread_;
};

/// Threads for work that somebody waits for: all cores.
int usual_threads();

}  // namespace gui
