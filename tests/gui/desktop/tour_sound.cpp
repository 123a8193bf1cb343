// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/level.hpp"
#include "analysis/pitch.hpp"
#include "analysis/units.hpp"
#include "tests/gui/desktop/tour.hpp"

#include <QProcess>
#include <QTest>

#include <algorithm>
#include <cstdio>
#include <cstring>

namespace tour {
namespace {

constexpr double rate = 48000.0;

/// What the null sink hears meanwhile, one channel.
std::vector<double> recorded(int ms) {
    QProcess parec;
    parec.start("parec", {"-d", "null.monitor", "--format=s16le", "--channels=1", "--rate=48000", "--latency-msec=20"});
    if (!parec.waitForStarted(3000)) return {};
    rest(ms);
    parec.terminate();
    parec.waitForFinished(3000);
    const QByteArray bytes = parec.readAllStandardOutput();
    std::vector<double> samples;
    for (qsizetype i = 0; i + 1 < bytes.size(); i += 2) {
        qint16 sample = 0;
        std::memcpy(&sample, bytes.constData() + i, sizeof sample);
        samples.push_back(sample / 32768.0);
    }
    return samples;
}

void tell(const char* what, const std::vector<double>& heard, double expected_hz) {
    const std::size_t tail = std::min<std::size_t>(heard.size(), 24000);
    const std::span<const double> end(heard.data() + (heard.size() - tail), tail);
    const auto pitch = analysis::measure_pitch(end, rate, analysis::pitch_range_around(expected_hz));
    std::printf("| %s | %.2f | ", what, expected_hz);
    if (pitch)
        std::printf("%.2f | %.1f | %.0f |", pitch->hz, analysis::cents_between(pitch->hz, expected_hz),
                    pitch->clarity_db);
    else
        std::printf("- | - | - |");
    std::printf(" %.1f |\n", analysis::db_from_ratio(std::max(analysis::rms(end), 1e-6)));
}

}  // namespace

void measure_sound(gui::MainWindow& window, gui::Desk& desk, const QString& /*folder*/) {
    window.show_page(0);
    std::printf(
        "\n| played | expected, Hz | heard, Hz | cents | clarity, dB | level, dB re full scale "
        "|\n|---|---|---|---|---|---|\n");
    int underruns = 0;
    sim::Motion motion = sim::Motion::silent;
    QObject scope;
    QObject::connect(&desk.live, &gui::LiveBow::heard, &scope, [&](const gui::LiveHearing& hearing) {
        underruns = hearing.underruns;
        motion = hearing.motion;
    });
    const auto settle = [&] {
        return wait_until([&] { return desk.bands.band()->fine && !desk.bands.runner().busy(); });
    };
    desk.selection.set_stop(0.0);
    settle();
    desk.guide.put_by_hand(*desk.bands.band()->band.best);
    QTest::keyClick(&window, Qt::Key_B);
    rest(700);
    if (!desk.live.sounding()) std::printf("\n- B did not put the bow on the string\n\n");
    tell("open string, bow at its best place", recorded(1500), desk.selection.pitch_hz());
    desk.selection.set_stop(12.0);
    settle();
    rest(300);
    tell("octave, bow left behind", recorded(1500), desk.selection.pitch_hz());
    std::printf("\nleft behind, motion heard: %s\n\n", std::string(sim::motion_name(motion)).c_str());
    QTest::keyClick(&window, Qt::Key_F);
    rest(300);
    tell("octave, bow follows", recorded(1500), desk.selection.pitch_hz());
    std::printf("\nfollows, motion heard: %s; underruns: %d\n\n", std::string(sim::motion_name(motion)).c_str(),
                underruns);
    QTest::keyClick(&window, Qt::Key_B);
    rest(300);
    tell("bow off the string", recorded(800), desk.selection.pitch_hz());
}

}  // namespace tour
