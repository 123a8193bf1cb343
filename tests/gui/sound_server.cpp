// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/gui/sound_server.hpp"

#include "analysis/audio_file.hpp"

#include <QElapsedTimer>
#include <QEventLoop>
#include <QTimer>

#include <gtest/gtest.h>

#include <sys/prctl.h>
#include <csignal>
#include <cstring>

namespace tests {

namespace {

constexpr int patience_ms = 10000;

void finish(QProcess& process) {
    if (process.state() == QProcess::NotRunning) return;
    process.terminate();
    if (!process.waitForFinished(patience_ms)) process.kill();
    process.waitForFinished(patience_ms);
}

}  // namespace

SoundServer::SoundServer() {
    const QByteArray folder = folder_.path().toUtf8();
    for (const char* name : {"XDG_RUNTIME_DIR", "HOME", "XDG_CONFIG_HOME"}) qputenv(name, folder);
    qputenv("PULSE_SERVER", "unix:" + folder + "/pulse/native");
    process_.setProgram("pulseaudio");
    process_.setArguments(
        {"--daemonize=no", "--exit-idle-time=-1", "-n", "-L", "module-null-sink sink_name=null rate=48000",
         // Qt does not take a monitor for a microphone
         "-L", "module-remap-source source_name=microphone master=null.monitor", "-L", "module-native-protocol-unix"});
    process_.setProcessChannelMode(QProcess::MergedChannels);
    // a test that dies must not leave a server behind
    process_.setChildProcessModifier([] { prctl(PR_SET_PDEATHSIG, SIGTERM); });
    process_.start();
    if (!process_.waitForStarted(patience_ms)) {
        trouble_ = "pulseaudio is not there: " + process_.errorString().toStdString();
    } else if (!runs_within(patience_ms)) {
        trouble_ = "pulseaudio does not run: " + process_.readAll().toStdString();
    }
}

SoundServer::~SoundServer() { end(); }

void SoundServer::end() { finish(process_); }

bool SoundServer::runs_within(int milliseconds) {
    QElapsedTimer since;
    since.start();
    while (since.elapsed() < milliseconds) {
        QProcess question;
        question.start("pactl", {"list", "short", "sinks"});
        if (question.waitForFinished(milliseconds) && question.exitCode() == 0 &&
            question.readAllStandardOutput().contains("null"))
            return true;
        if (process_.waitForFinished(50)) return false;
    }
    return false;
}

SoundServer::Recording::Recording() {
    process_.start(
        "parec", {"--device=null.monitor", "--format=float32le", "--channels=1", "--rate=48000", "--latency-msec=10"});
    EXPECT_TRUE(process_.waitForStarted(patience_ms));
    while (process_.waitForReadyRead(patience_ms) && process_.bytesAvailable() < 4800) {
    }
}

SoundServer::Recording::~Recording() { finish(process_); }

std::vector<double> SoundServer::Recording::samples() {
    process_.waitForReadyRead(0);
    bytes_ += process_.readAllStandardOutput();
    std::vector<double> all(static_cast<std::size_t>(bytes_.size()) / sizeof(float));
    for (std::size_t i = 0; i < all.size(); ++i) {
        float sample = 0.0F;
        std::memcpy(&sample, bytes_.constData() + i * sizeof sample, sizeof sample);
        all[i] = sample;
    }
    return all;
}

void SoundServer::Recording::forget() {
    samples();
    bytes_.clear();
}

SoundServer::Playing::Playing(const std::vector<double>& samples) {
    const QString file = folder_.filePath("tone.wav");
    analysis::write_audio(file.toStdString(), analysis::Signal{samples, 48000.0});
    process_.start("paplay", {file});
    EXPECT_TRUE(process_.waitForStarted(patience_ms));
}

SoundServer::Playing::~Playing() { finish(process_); }

void wait_for(int milliseconds) {
    QEventLoop loop;
    QTimer::singleShot(milliseconds, &loop, &QEventLoop::quit);
    loop.exec();
}

}  // namespace tests
