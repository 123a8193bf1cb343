// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/view/main_window.hpp"

#include <QApplication>
#include <QElapsedTimer>
#include <QString>

#include <functional>
#include <vector>

/// A scripted hand that goes through the window, makes pictures and measures.
namespace tour {

/// An application that knows the longest time it was busy with one event.
class TimedApplication : public QApplication {
public:
    using QApplication::QApplication;
    bool notify(QObject* receiver, QEvent* event) override;

    void forget() {
        longest_ = 0.0;
        times_.clear();
    }
    double longest_ms() const { return longest_; }
    const QString& longest_what() const { return what_; }
    const std::vector<double>& times_ms() const { return times_; }

private:
    int depth_ = 0;
    double longest_ = 0.0;
    QString what_;
    std::vector<double> times_;  ///< of events that took 1 ms and more
};

/// Lets the event loop run.
void rest(int ms);
bool wait_until(const std::function<bool()>& done, int most_ms = 120000);
TimedApplication& application();

/// Every page at both sizes, light and dark, and the first steps: DIR/<page>_<size>_<theme>.png.
void take_pictures(gui::MainWindow& window, gui::Desk& desk, const QString& folder);

/// Finger from the open string to the end of the board and back, then the bow, at 30 events a second; a table.
void measure_drags(gui::MainWindow& window, gui::Desk& desk);

/// Presses B, records what the sound server's null sink hears, and measures it; a table.
void measure_sound(gui::MainWindow& window, gui::Desk& desk, const QString& folder);

}  // namespace tour
