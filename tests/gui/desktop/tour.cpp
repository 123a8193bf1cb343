// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/gui/desktop/tour.hpp"

#include "gui/view/dress.hpp"

#include <QDir>
#include <QFileInfo>
#include <QPushButton>
#include <QSettings>
#include <QTest>

#include <cstdio>

namespace tour {

bool TimedApplication::notify(QObject* receiver, QEvent* event) {
    if (depth_ > 0) return QApplication::notify(receiver, event);
    const QString who = receiver->metaObject()->className();
    const int kind = event->type();
    QElapsedTimer clock;
    clock.start();
    ++depth_;
    const bool taken = QApplication::notify(receiver, event);
    --depth_;
    const double took = static_cast<double>(clock.nsecsElapsed()) * 1e-6;
    if (took >= 1.0) times_.push_back(took);
    if (took > longest_) {
        longest_ = took;
        what_ = QString("%1, event %2").arg(who).arg(kind);
    }
    return taken;
}

TimedApplication& application() { return *static_cast<TimedApplication*>(QCoreApplication::instance()); }

void rest(int ms) { QTest::qWait(ms); }

bool wait_until(const std::function<bool()>& done, int most_ms) { return QTest::qWaitFor(done, most_ms); }

namespace {

void export_everything(gui::MainWindow& window, const QString& folder) {
    int written = 0;
    const std::vector<gui::Page*> pages = window.pages();
    for (std::size_t i = 0; i < pages.size(); ++i) {
        window.show_page(static_cast<int>(i));
        for (QPushButton* button : pages[i]->findChildren<QPushButton*>())
            if (button->text() == "Note, left behind") button->click();  // takes are there once they were asked for
        wait_until([&] { return !pages[i]->exports().empty(); });
        for (const gui::Export& one : pages[i]->exports()) {
            for (const QString& ending : one.endings.section('(', 1).remove(')').split(' ')) {
                const QString file = folder + "/" + QFileInfo(one.file_name).completeBaseName() + ending.mid(1);
                if (window.write(one, file) && QFileInfo(file).size() > 0) ++written;
            }
        }
    }
    std::printf("- exported files: %d\n", written);
}

int run(const QString& folder, const QStringList& what) {
    QSettings settings(folder + "/settings.ini", QSettings::IniFormat);
    gui::Desk desk(sim::find_preset("division_bass_viol"), settings);
    gui::MainWindow window(desk);
    window.resize(1280, 800);
    window.show();
    if (!QTest::qWaitForWindowExposed(&window)) return 1;
    window.activateWindow();  // there is no window manager that would
    if (!QTest::qWaitForWindowActive(&window))
        std::printf("- the window could not be made active: short cuts are deaf\n");
    QObject::connect(&desk, &gui::Desk::wrong, [](const QString& title, const QString& message) {
        std::printf("- told: %s: %s\n", qPrintable(title), qPrintable(message));
    });
    wait_until([&] { return desk.bands.band() && desk.bands.band()->fine; });
    if (what.isEmpty() || what.contains("drags")) measure_drags(window, desk);
    if (what.isEmpty() || what.contains("sound")) measure_sound(window, desk, folder);
    if (what.isEmpty() || what.contains("pictures")) take_pictures(window, desk, folder);
    if (what.isEmpty() || what.contains("exports")) export_everything(window, folder);
    const bool closed = window.close();
    std::printf("- window closed: %s\n", closed ? "yes" : "no");
    return closed ? 0 : 1;
}

}  // namespace
}  // namespace tour

int main(int count, char** words) {
    tour::TimedApplication application(count, words);
    gui::apply_theme(application, gui::Theme::light);
    const QStringList asked = QCoreApplication::arguments();
    if (asked.size() < 2) {
        std::fprintf(stderr, "usage: desktop_tour FOLDER [drags] [sound] [pictures] [exports]\n");
        return 2;
    }
    QDir().mkpath(asked[1]);
    return tour::run(asked[1], asked.mid(2));
}
