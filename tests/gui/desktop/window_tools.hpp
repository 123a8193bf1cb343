// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/view/main_window.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>
#include <QAbstractButton>
#include <QApplication>
#include <QMessageBox>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

namespace tests {

/// The window as it stands after a start, with settings of its own.
struct WindowTest : testing::Test {
    WindowTest() {
        window.show();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));  // or it hears no short cuts
    }

    QString place(const char* name) const { return folder.filePath(name); }
    /// Shows the page whose title, without "&", holds these words.
    gui::Page* page(const QString& words) {
        const std::vector<gui::Page*> all = window.pages();
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (!all[i]->title().remove('&').contains(words)) continue;
            window.show_page(static_cast<int>(i));
            return all[i];
        }
        return nullptr;
    }
    /// The message that is shown now; closes it.
    static QString message() {
        for (QWidget* widget : QApplication::topLevelWidgets()) {
            auto* box = qobject_cast<QMessageBox*>(widget);
            if (box == nullptr || !box->isVisible()) continue;
            const QString text = box->text();
            box->done(QMessageBox::Ok);
            return text;
        }
        return {};
    }
    /// Presses a button of the next message that waits for an answer.
    static void answer_next(QMessageBox::StandardButton button) {
        QTimer::singleShot(50, [button] {
            auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            if (box != nullptr && box->button(button) != nullptr) box->button(button)->click();
        });
    }

    QTemporaryDir folder;
    QSettings settings{folder.filePath("settings.ini"), QSettings::IniFormat};
    gui::Desk desk{sim::find_preset("division_bass_viol"), settings};
    gui::MainWindow window{desk};
};

}  // namespace tests
