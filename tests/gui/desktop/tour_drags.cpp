// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/bow_pad.hpp"
#include "gui/view/stage_handles.hpp"
#include "gui/view/stage_view.hpp"
#include "tests/gui/desktop/tour.hpp"

#include <QMouseEvent>

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <map>

namespace tour {
namespace {

constexpr int event_ms = 33;  // 30 a second

double median(std::vector<double> values) {
    if (values.empty()) return 0.0;
    std::ranges::sort(values);
    return values[values.size() / 2];
}

double greatest(const std::vector<double>& values) { return values.empty() ? 0.0 : *std::ranges::max_element(values); }

void mouse(QWidget& widget, QEvent::Type kind, QPointF place) {
    const Qt::MouseButton button = kind == QEvent::MouseMove ? Qt::NoButton : Qt::LeftButton;
    QMouseEvent event(kind, place, widget.mapToGlobal(place), button,
                      kind == QEvent::MouseButtonRelease ? Qt::NoButton : Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(&widget, &event);
}

/// Drags over `steps` places, each event_ms after the last.
void drag(QWidget& widget, int steps, const std::function<QPointF(double share)>& place) {
    mouse(widget, QEvent::MouseButtonPress, place(0.0));
    QElapsedTimer clock;
    clock.start();
    for (int i = 1; i <= steps; ++i) {
        mouse(widget, QEvent::MouseMove, place(static_cast<double>(i) / steps));
        const qint64 left = static_cast<qint64>(i) * event_ms - clock.elapsed();
        if (left > 0) rest(static_cast<int>(left));
    }
    mouse(widget, QEvent::MouseButtonRelease, place(1.0));
}

void tell_busy(const char* what) {
    const auto& times = application().times_ms();
    const auto over = std::ranges::count_if(times, [](double ms) { return ms > 50.0; });
    std::printf("| %s | %.1f | %s | %d |\n", what, application().longest_ms(), qPrintable(application().longest_what()),
                static_cast<int>(over));
    application().forget();
}

void drag_finger(gui::MainWindow& window, gui::Desk& desk, bool down) {
    auto* finger = window.findChild<gui::FingerHandle*>();
    const gui::StageScale scale = window.stage().scale();
    const double nut = scale.x(desk.selection.open_length() * 0.99);
    const double end = scale.x(desk.selection.length_at(desk.selection.last_stop()));
    drag(*finger, 240, [&](double share) {
        const double x = nut + (end - nut) * (down ? 1.0 - share : share);
        return QPointF(finger->mapFromParent(QPoint(static_cast<int>(x), finger->geometry().center().y())));
    });
}

void drag_bow(gui::MainWindow& window) {
    auto* pad = window.findChild<gui::BowPad*>();
    const QRectF field(pad->rect());
    drag(*pad, 150, [&](double share) {
        return QPointF(field.width() * (0.3 + 0.5 * share), field.height() * (0.3 + 0.4 * std::abs(0.5 - share)));
    });
}

}  // namespace

void measure_drags(gui::MainWindow& window, gui::Desk& desk) {
    window.show_page(0);
    rest(500);
    std::map<double, qint64> asked;  // stop -> when the finger came there
    std::vector<double> delays;
    std::vector<double> gaps;
    QElapsedTimer clock;
    clock.start();
    qint64 last = 0;
    const auto first = QObject::connect(&desk.selection, &gui::Selection::note_changed,
                                        [&] { asked[desk.selection.stop()] = clock.elapsed(); });
    const auto second = QObject::connect(&desk.bands, &gui::BandFinder::found, [&](const gui::NoteBandPointer& band) {
        if (band->fine || !asked.contains(band->stop)) return;
        delays.push_back(static_cast<double>(clock.elapsed() - asked[band->stop]));
        if (last > 0) gaps.push_back(static_cast<double>(clock.elapsed() - last));
        last = clock.elapsed();
    });
    std::printf("| dragging at 30 events/s | longest busy, ms | with | over 50 ms |\n|---|---|---|---|\n");
    application().forget();
    drag_finger(window, desk, false);
    tell_busy("finger, open string to end of the board");
    drag_finger(window, desk, true);
    tell_busy("finger, back again");
    drag_bow(window);
    tell_busy("bow");
    window.show_page(1);
    wait_until([&] { return desk.climb.up_to_date(); });
    rest(600);
    tell_busy("the climb's page comes");
    window.show_page(2);
    wait_until([&] { return desk.window.up_to_date(); });
    rest(600);
    tell_busy("the window's page comes");
    drag_finger(window, desk, false);
    tell_busy("finger, with the window's page open");
    QObject::disconnect(first);
    QObject::disconnect(second);
    std::printf(
        "\n- coarse band after the finger: median %.0f ms, greatest %.0f ms, %d bands; between two bands: median %.0f "
        "ms\n",
        median(delays), greatest(delays), static_cast<int>(delays.size()), median(gaps));
    // a single step of a finger at rest
    std::vector<double> alone;
    std::vector<double> processor;
    for (const double stop : {3.0, 7.0, 9.0, 12.0, 15.0, 19.0}) {
        wait_until([&] { return !desk.bands.runner().busy(); });
        QElapsedTimer one;
        one.start();
        const std::clock_t used = std::clock();
        desk.selection.set_stop(stop);
        wait_until([&] { return desk.bands.band()->stop == desk.selection.stop(); });
        alone.push_back(static_cast<double>(one.nsecsElapsed()) * 1e-6);
        processor.push_back(1e3 * static_cast<double>(std::clock() - used) / CLOCKS_PER_SEC);
    }
    std::printf("- coarse band after a single step: median %.0f ms, greatest %.0f ms\n", median(alone),
                greatest(alone));
    std::printf("- processor time meanwhile, all threads: median %.0f ms, greatest %.0f ms\n", median(processor),
                greatest(processor));
}

}  // namespace tour
