// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/chart_view.hpp"
#include "gui/view/dress.hpp"
#include "gui/view/recordings_page.hpp"
#include "gui/view/set_up_wizard.hpp"
#include "sim/demo_recordings.hpp"
#include "tests/gui/desktop/tour.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QProgressBar>
#include <QPushButton>

#include <algorithm>
#include <cstdio>

namespace tour {
namespace {

const char* const page_names[] = {"hear",    "climb",  "window",     "passage",
                                  "strings", "lesson", "recordings", "instrument"};

void settle(gui::MainWindow& window, gui::Desk& desk, std::size_t page) {
    wait_until([&] { return desk.bands.band()->stop == desk.selection.stop() && desk.bands.band()->fine; });
    if (page == 1) wait_until([&] { return desk.climb.up_to_date(); });
    if (page == 2) wait_until([&] { return desk.window.up_to_date(); });
    if (page == 3) wait_until([&] { return desk.passage.up_to_date(); });
    rest(500);  // a page's own work has begun by then
    wait_until([&] {
        const auto bars = window.findChildren<QProgressBar*>();
        return std::ranges::none_of(bars, [](const QProgressBar* bar) { return bar->isVisible(); });
    });
    if (auto* recordings = dynamic_cast<gui::RecordingsPage*>(window.pages()[page])) {
        if (!recordings->answer())
            recordings->open(QString::fromStdString(sim::find_recording("bow_left_behind.flac").string()));
        wait_until([&] { return recordings->answer() != nullptr; });
    }
    wait_until([&] {
        for (const gui::ChartView* chart : window.findChildren<gui::ChartView*>())
            if (chart->isVisible() && chart->has_chart() && !chart->drawn()) return false;
        return true;
    });
    rest(300);
}

/// The bow is looked for once; then each picture shows what was found, as a chart and as a table.
void bow_pictures(gui::RecordingsPage& page, const std::function<void(const QString&)>& take) {
    QPushButton* find = nullptr;
    QPushButton* as_table = nullptr;
    for (QPushButton* button : page.findChildren<QPushButton*>()) {
        if (button->text() == "Where was the bow?") find = button;
        if (button->text().contains("table")) as_table = button;
    }
    QComboBox* shown = nullptr;
    for (QComboBox* box : page.findChildren<QComboBox*>()) {
        if (box->accessibleName() == "What is shown") shown = box;
        if (box->accessibleName() == "Where the notes are looked for") box->setCurrentIndex(1);
    }
    if (!page.match()) {
        find->click();
        wait_until([&] { return page.match() != nullptr; }, 600000);
    }
    shown->setCurrentIndex(shown->count() - 2);
    const auto* chart = page.findChild<gui::ChartView*>();
    wait_until([&] { return chart->drawn(); });
    rest(300);
    take("recordings_bow");
    as_table->click();
    rest(100);
    take("recordings_bow_table");
    as_table->click();
    shown->setCurrentIndex(0);
}

void picture_of(QWidget& widget, const QString& file) { widget.grab().save(file); }

void wizard_pictures(gui::MainWindow& window, gui::Desk& desk, const QString& folder, const QString& theme) {
    gui::SetUpWizard wizard(desk.instrument, 0, desk.takes, &window);
    wizard.show();
    for (int page = 0; page < 4; ++page) {
        rest(150);
        if (page == 3) wait_until([&] { return wizard.findChildren<QCheckBox*>().size() == 6; });
        rest(150);
        picture_of(wizard, QString("%1/set_up_%2_%3.png").arg(folder).arg(page + 1).arg(theme));
        if (page < 3) wizard.next();
    }
    wizard.reject();
}

}  // namespace

void take_pictures(gui::MainWindow& window, gui::Desk& desk, const QString& folder) {
    desk.selection.set_stop(12.0);
    for (const bool dark : {false, true}) {
        gui::apply_theme(application(), dark ? gui::Theme::dark : gui::Theme::light);
        const QString theme = dark ? "dark" : "light";
        for (const QSize size : {QSize(1280, 800), QSize(1920, 1080)}) {
            window.resize(size);
            const QString name = QString("_%1_%2.png").arg(size.width()).arg(theme);
            for (std::size_t page = 0; page < window.pages().size(); ++page) {
                window.show_page(static_cast<int>(page));
                settle(window, desk, page);
                picture_of(window, folder + "/" + page_names[page] + name);
                if (auto* recordings = dynamic_cast<gui::RecordingsPage*>(window.pages()[page]))
                    bow_pictures(*recordings,
                                 [&](const QString& what) { picture_of(window, folder + "/" + what + name); });
                if (page != 1) continue;
                QPushButton* as_table = nullptr;
                for (QPushButton* button : window.pages()[page]->findChildren<QPushButton*>())
                    if (button->text().contains("table")) as_table = button;
                as_table->click();
                rest(100);
                picture_of(window, folder + "/climb_table" + name);
                as_table->click();
            }
            window.show_first_steps();
            rest(200);
            picture_of(window, folder + "/first_steps" + name);
            for (QPushButton* button : window.findChildren<QPushButton*>())
                if (button->isDefault()) button->click();
            rest(100);
        }
        wizard_pictures(window, desk, folder, theme);
    }
    gui::apply_theme(application(), gui::Theme::light);
    std::printf("- pictures are in %s\n", qPrintable(folder));
}

}  // namespace tour
