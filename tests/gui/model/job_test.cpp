// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/job.hpp"

#include "analysis/errors.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>
#include <QThread>

#include <atomic>

namespace {

using gui::JobRunner;
using tests::wait_until;

/// Waits until it is told to stop, a minute at most.
JobRunner::Delivery until_stopped(const sim::Workers& workers) {
    for (int i = 0; i < 60000 && !workers.stop.stop_requested(); ++i) QThread::msleep(1);
    throw sim::Stopped();
}

/// expects  the work elsewhere, its delivery in the thread that asked
TEST(JobRunnerTest, WorksElsewhereAndDeliversHere) {
    JobRunner runner(1);
    QThread* const here = QThread::currentThread();
    std::atomic<QThread*> worked{nullptr};
    QThread* delivered = nullptr;
    runner.ask([&](const sim::Workers&) -> JobRunner::Delivery {
        worked = QThread::currentThread();
        return [&] { delivered = QThread::currentThread(); };
    });
    EXPECT_TRUE(runner.busy());
    ASSERT_TRUE(wait_until([&] { return !runner.busy(); }));
    EXPECT_NE(worked.load(), here);
    EXPECT_EQ(delivered, here);
}

/// expects  the piece that runs is stopped, the one that waits never runs, the newest is delivered
TEST(JobRunnerTest, OnlyTheNewestIsDelivered) {
    JobRunner runner(1);
    std::vector<int> delivered;
    std::atomic<bool> second_ran{false};
    runner.ask(until_stopped);
    runner.ask([&](const sim::Workers&) -> JobRunner::Delivery {
        second_ran = true;
        return [&] { delivered.push_back(2); };
    });
    runner.ask([&](const sim::Workers&) -> JobRunner::Delivery { return [&] { delivered.push_back(3); }; });
    ASSERT_TRUE(wait_until([&] { return !runner.busy(); }));
    EXPECT_EQ(delivered.back(), 3);
    EXPECT_TRUE(delivered == std::vector{3} || second_ran);
}

/// expects  a piece that may finish is delivered although a newer one waits
TEST(JobRunnerTest, APieceThatMayFinishIsDeliveredAsWell) {
    JobRunner runner(1);
    std::atomic<bool> began{false};
    std::atomic<bool> go_on{false};
    std::vector<int> delivered;
    runner.ask(
        [&](const sim::Workers& workers) -> JobRunner::Delivery {
            began = true;
            while (!go_on) QThread::msleep(1);
            EXPECT_FALSE(workers.stop.stop_requested());
            return [&] { delivered.push_back(1); };
        },
        JobRunner::Superseded::finishes);
    ASSERT_TRUE(wait_until([&] { return began.load(); }));
    runner.ask([&](const sim::Workers&) -> JobRunner::Delivery { return [&] { delivered.push_back(2); }; });
    go_on = true;
    ASSERT_TRUE(wait_until([&] { return !runner.busy(); }));
    EXPECT_EQ(delivered, (std::vector{1, 2}));
}

/// expects  one message, and a runner that works on
TEST(JobRunnerTest, AnErrorIsToldAndTheNextPieceRuns) {
    JobRunner runner(1);
    QStringList told;
    QObject::connect(&runner, &JobRunner::failed, [&](const QString& message) { told.append(message); });
    runner.ask([](const sim::Workers&) -> JobRunner::Delivery { throw analysis::InputError("here", "is wrong"); });
    ASSERT_TRUE(wait_until([&] { return !runner.busy(); }));
    EXPECT_EQ(told, QStringList{"here: is wrong"});
    bool delivered = false;
    runner.ask([&](const sim::Workers&) -> JobRunner::Delivery { return [&] { delivered = true; }; });
    ASSERT_TRUE(wait_until([&] { return !runner.busy(); }));
    EXPECT_TRUE(delivered);
}

/// expects  nothing of what was asked before is delivered after stop()
TEST(JobRunnerTest, StoppedWorkIsNotDelivered) {
    JobRunner runner(1);
    bool delivered = false;
    runner.ask([&](const sim::Workers&) -> JobRunner::Delivery { return [&] { delivered = true; }; });
    runner.stop();
    ASSERT_TRUE(wait_until([&] { return !runner.busy(); }));
    EXPECT_FALSE(delivered);
}

/// expects  a piece that waits for its turn never to run once it was stopped
TEST(JobRunnerTest, WorkThatHasNotBegunIsDroppedWhenStopped) {
    JobRunner runner(1);
    std::atomic<bool> began{false};
    std::atomic<bool> go_on{false};
    std::atomic<bool> second_ran{false};
    runner.ask([&](const sim::Workers&) -> JobRunner::Delivery {
        began = true;
        while (!go_on) QThread::msleep(1);
        return {};
    });
    ASSERT_TRUE(wait_until([&] { return began.load(); }));
    runner.ask([&](const sim::Workers&) -> JobRunner::Delivery {
        second_ran = true;
        return {};
    });
    runner.stop();
    EXPECT_TRUE(runner.busy());
    go_on = true;
    ASSERT_TRUE(wait_until([&] { return !runner.busy(); }));
    EXPECT_FALSE(second_ran);
    EXPECT_FALSE(runner.waiting());
}

/// expects  a runner that goes away while it works stops the work and waits for it
TEST(JobRunnerTest, GoesAwayInTheMiddleOfItsWork) {
    std::atomic<bool> began{false};
    {
        JobRunner runner(1);
        runner.ask([&](const sim::Workers& workers) -> JobRunner::Delivery {
            began = true;
            return until_stopped(workers);
        });
        ASSERT_TRUE(wait_until([&] { return began.load(); }));
    }
    SUCCEED();
}

}  // namespace
