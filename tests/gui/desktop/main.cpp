// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/dress.hpp"

#include <gtest/gtest.h>
#include <QApplication>

int main(int count, char** words) {
    // set here too, so that the program can be started by hand anywhere
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    testing::InitGoogleTest(&count, words);
    QApplication application(count, words);
    gui::apply_theme(application, gui::Theme::light);
    return RUN_ALL_TESTS();
}
