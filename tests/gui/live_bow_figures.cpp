// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of the live bow, to be read, not tested: live_bow_figures [SECONDS, 60 by default]
#include "analysis/units.hpp"
#include "gui/sound/live_bow.hpp"
#include "sim/sound/live_ear.hpp"
#include "tests/gui/sound_server.hpp"

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QTimer>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <numbers>

namespace {

constexpr double card_rate = 48000.0;
constexpr std::size_t block = 240;  // 5 ms

double thread_seconds() {
    timespec time{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) + 1e-9 * static_cast<double>(time.tv_nsec);
}

/// A hand that goes up and down the string every four seconds, moved 30 times a second.
sim::sound::LiveStroke hand(const sim::Preset& preset, double length, double time) {
    const double moved = std::floor(30.0 * time) / 30.0;
    const double swing = std::sin(0.5 * std::numbers::pi * moved);
    return {.contact = length * (0.12 + 0.06 * swing),
            .force = sim::middle_force(preset.player) * std::exp2(0.5 * swing),
            .speed = preset.player.speed};
}

/// A voice rendered as quickly as it goes, its ear beside it.
void voice_alone(const char* name, double seconds) {
    const sim::Preset preset = sim::find_preset(name);
    sim::sound::LiveVoice voice(card_rate);
    auto ready = std::make_unique<sim::sound::LiveNote>(preset, 0, 12.0, card_rate);
    const int factor = ready->factor;
    const sim::Note note = ready->note;
    sim::sound::LiveEar ear(card_rate);
    ear.expect({.serial = voice.set_note(std::move(ready)), .note = note});
    std::vector<float> sound(block);
    double rendering = 0.0, worst = 0.0, hearing = 0.0, worst_wall = 0.0;
    const int blocks = static_cast<int>(seconds * card_rate / block);
    for (int i = 0; i < blocks; ++i) {
        voice.set_stroke(hand(preset, note.string.length, i * block / card_rate));
        QElapsedTimer wall;
        wall.start();
        const double before = thread_seconds();
        voice.render(sound);
        const double took = thread_seconds() - before;
        worst_wall = std::max(worst_wall, 1e-9 * static_cast<double>(wall.nsecsElapsed()));
        rendering += took;
        worst = std::max(worst, took);
        if (i % 13 != 0) continue;
        const double began = thread_seconds();
        ear.hear(voice);
        hearing += thread_seconds() - began;
    }
    std::printf("| %s | %.0f | %.1f | %.2f | %.2f | %.1f |\n", name, factor * card_rate, 100.0 * rendering / seconds,
                1e3 * worst, 1e3 * worst_wall, 100.0 * hearing / seconds);
}

/// Milliseconds from a call of the hand's to its sound in the recording, the recorder's own 10 ms with it.
void response(gui::LiveBow& bow, tests::SoundServer::Recording& recording) {
    std::vector<double> delays;
    for (int i = 0; i < 10; ++i) {
        bow.set_volume(0.0);
        tests::wait_for(300);
        recording.forget();
        QElapsedTimer since;
        since.start();
        bow.set_volume(1.0);
        bool found = false;
        while (!found && since.elapsed() < 1000) {
            tests::wait_for(1);
            found = std::ranges::any_of(recording.samples(), [](double x) { return std::abs(x) > 0.01; });
        }
        delays.push_back(1e-6 * static_cast<double>(since.nsecsElapsed()));
    }
    std::ranges::sort(delays);
    std::printf(
        "\nFrom the hand to the recording, 10 times: median %.0f ms, worst %.0f ms, the recorder's 10 ms with it.\n",
        delays[5], delays.back());
}

void through_the_server(double seconds) {
    tests::SoundServer server;
    if (!server.trouble().empty()) {
        std::printf("\n%s\n", server.trouble().c_str());
        return;
    }
    const sim::Preset preset = sim::find_preset("division_bass_viol");
    const double length = sim::make_note(preset, preset.strings[0], 12.0).string.length;
    tests::SoundServer::Recording recording;
    gui::LiveBow bow;
    int underruns = 0;
    QObject::connect(&bow, &gui::LiveBow::heard,
                     [&](gui::LiveHearing hearing) { underruns = std::max(underruns, hearing.underruns); });
    QElapsedTimer since;
    since.start();
    QTimer moves;
    QObject::connect(&moves, &QTimer::timeout,
                     [&] { bow.set_stroke(hand(preset, length, 1e-3 * static_cast<double>(since.elapsed()))); });
    moves.start(33);
    bow.set_note(preset, 0, 12.0);
    bow.start();
    tests::wait_for(2000);
    const int before = underruns;
    tests::wait_for(static_cast<int>(1000.0 * seconds));
    std::printf("\nThrough a server that plays to nobody, %.0f s: %d underruns (%d while it began).\n", seconds,
                underruns - before, before);
    response(bow, recording);
}

}  // namespace

int main(int count, char** words) {
    const QCoreApplication app(count, words);
    const double seconds = count > 1 ? std::atof(words[1]) : 60.0;
    std::printf(
        "| voice, %.0f s, octave of the top string | steps a second | of a core, %% | worst 5 ms block, ms of "
        "processor | ms by the clock | the ear, %% of a core |\n|---|---|---|---|---|---|\n",
        seconds);
    for (const char* name : {"division_bass_viol", "violin", "cello", "descant_viol"}) voice_alone(name, seconds);
    through_the_server(seconds);
    return 0;
}
