// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/desktop/start.hpp"

#include "gui/view/dress.hpp"
#include "gui/view/main_window.hpp"

#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <QSettings>
#include <QTimer>
#include <QTranslator>

#include <cstdio>
#include <cstdlib>
#include <exception>

namespace gui {
namespace {

constexpr const char* first_preset = "division_bass_viol";

/// Without a display Qt ends the program before there is anything to catch; this says why, in words.
void tell_why(QtMsgType kind, const QMessageLogContext& /*where*/, const QString& text) {
    if (kind == QtFatalMsg) {
        std::fprintf(stderr,
                     "bowband-desktop: no window can be opened here, since there is no display. Start it from a "
                     "desktop session, or use the command bowband instead.\n");
        std::_Exit(EXIT_FAILURE);
    }
    if (kind == QtCriticalMsg) std::fprintf(stderr, "%s\n", qPrintable(text));
}

Theme theme_of(const QString& name) {
    return name == "light" ? Theme::light : name == "dark" ? Theme::dark : Theme::system;
}

QString asked_preset() {
    QCommandLineParser parser;
    parser.setApplicationDescription(
        QCoreApplication::translate("gui::start", "Shows and sounds where on the string the bow must go."));
    parser.addHelpOption();
    parser.addVersionOption();
    parser.addPositionalArgument("PRESET", QCoreApplication::translate("gui::start", "A preset file to open."),
                                 "[PRESET]");
    parser.process(*QCoreApplication::instance());
    return parser.positionalArguments().value(0);
}

int run(QApplication& application) {
    const QString file = asked_preset();
    QSettings settings;
    apply_theme(application, theme_of(settings.value("theme").toString()));
    Desk desk(sim::find_preset(first_preset), settings);
    MainWindow window(desk);
    if (!window.restoreGeometry(settings.value("window_geometry").toByteArray())) window.resize(1280, 800);
    window.show();
    if (!settings.value("seen_first_steps").toBool()) {
        window.show_first_steps();
        settings.setValue("seen_first_steps", true);
    }
    if (!file.isEmpty()) QTimer::singleShot(0, &window, [&] { window.open(file); });
    return QApplication::exec();
}

}  // namespace

int run_desktop(int count, char** words) {
    QCoreApplication::setOrganizationName("bowband");
    QCoreApplication::setApplicationName("bowband-desktop");
    QCoreApplication::setApplicationVersion(BOWBAND_VERSION);
    qInstallMessageHandler(tell_why);
    QApplication application(count, words);
    qInstallMessageHandler(nullptr);
    QGuiApplication::setDesktopFileName("bowband");
    QApplication::setWindowIcon(QIcon(":/bowband.svg"));
    QTranslator translator;
    if (translator.load(QLocale(), "bowband", "_", ":/i18n")) QCoreApplication::installTranslator(&translator);
    try {
        return run(application);
    } catch (const std::exception& wrong) {
        std::fprintf(stderr, "bowband-desktop: %s\n", wrong.what());
        return EXIT_FAILURE;
    }
}

}  // namespace gui
