// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"

#include <QCoreApplication>
#include <QDeadlineTimer>
#include <QThread>

#include <functional>
#include <memory>

/// What tests of the window's models share.
namespace tests {

inline std::shared_ptr<const sim::Preset> division_viol() {
    return std::make_shared<const sim::Preset>(sim::find_preset("division_bass_viol"));
}

/// Runs the event loop until `done`, a minute at most.  Says whether it came.
inline bool wait_until(const std::function<bool()>& done) {
    const QDeadlineTimer limit(60000);
    while (!done() && !limit.hasExpired()) {
        QCoreApplication::processEvents();
        QThread::msleep(2);
    }
    return done();
}

}  // namespace tests
