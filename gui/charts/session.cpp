// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/session.hpp"

#include "analysis/errors.hpp"

#include <QApplication>
#include <QFontDatabase>
#include <QTemporaryDir>

#include <array>
#include <clocale>
#include <cstdio>
#include <optional>
#include <string>

namespace gui::charts {
namespace {

constexpr const char* runtime_variable = "XDG_RUNTIME_DIR";

/// A command's stderr is for the command: what Qt finds noteworthy about the machine doesn't change the picture.
void only_grave(QtMsgType kind, const QMessageLogContext& /*where*/, const QString& text) {
    if (kind == QtCriticalMsg || kind == QtFatalMsg) std::fprintf(stderr, "%s\n", qPrintable(text));
}

class QuietQt {
public:
    QuietQt() : before_(qInstallMessageHandler(only_grave)) {}
    ~QuietQt() { qInstallMessageHandler(before_); }
    QuietQt(const QuietQt&) = delete;
    QuietQt& operator=(const QuietQt&) = delete;

private:
    QtMessageHandler before_;
};

/// Qt wants such a folder even if it draws nothing on screen.
class RuntimeFolder {
public:
    RuntimeFolder() {
        if (qEnvironmentVariableIsSet(runtime_variable)) return;
        folder_.emplace();
        if (folder_->isValid()) qputenv(runtime_variable, folder_->path().toLocal8Bit());
    }
    ~RuntimeFolder() {
        if (folder_) qunsetenv(runtime_variable);
    }
    RuntimeFolder(const RuntimeFolder&) = delete;
    RuntimeFolder& operator=(const RuntimeFolder&) = delete;

private:
    std::optional<QTemporaryDir> folder_;
};

/// Qt takes the user's locale on at its start; numbers must stay as they were.
class SameLocale {
public:
    SameLocale() : before_(std::setlocale(LC_ALL, nullptr)) {}
    void restore() const { std::setlocale(LC_ALL, before_.c_str()); }

private:
    std::string before_;
};

}  // namespace

struct ChartSession::Offscreen {
    QuietQt quiet;
    RuntimeFolder runtime;
    SameLocale locale;
    // options rather than variables: they win over what the user has set for programs with windows
    std::array<std::string, 5> words{"bowband", "-platform", "offscreen", "-style", "fusion"};
    std::array<char*, 6> arguments{words[0].data(), words[1].data(), words[2].data(),
                                   words[3].data(), words[4].data(), nullptr};
    int count = 5;
    QApplication application{count, arguments.data()};
};

ChartSession::ChartSession() {
    if (QCoreApplication::instance() == nullptr) {
        offscreen_ = std::make_unique<Offscreen>();
        offscreen_->locale.restore();
    }
    if (QFontDatabase::families().isEmpty())
        throw analysis::OutputError("chart", "no font is installed; fonts-dejavu-core has what is needed");
}

ChartSession::~ChartSession() = default;

}  // namespace gui::charts
