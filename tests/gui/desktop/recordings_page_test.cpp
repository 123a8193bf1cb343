// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/recordings_page.hpp"
#include "gui/view/listening_panel.hpp"
#include "sim/demo_recordings.hpp"
#include "tests/gui/desktop/window_tools.hpp"

#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QTableView>

namespace {

using tests::wait_until;
using tests::WindowTest;

struct RecordingsPageTest : WindowTest {
    gui::RecordingsPage& recordings() { return *dynamic_cast<gui::RecordingsPage*>(page("Recordings")); }
    /// What a label of that spoken name says.
    QString told(const QString& name) {
        for (const QLabel* label : window.findChildren<QLabel*>())
            if (label->accessibleName() == name) return label->text();
        return {};
    }
};

/// expects  notes, words and chart of a demonstration, and every export whole
TEST_F(RecordingsPageTest, ShowsAndExportsARecording) {
    gui::RecordingsPage& shown = recordings();
    EXPECT_TRUE(shown.exports().empty());
    shown.open(QString::fromStdString(sim::find_recording("bow_follows.flac").string()));
    ASSERT_TRUE(wait_until([&] { return shown.answer() != nullptr; }));
    EXPECT_TRUE(shown.can_print());
    EXPECT_GT(shown.findChild<QTableView*>()->model()->rowCount(), 0);
    EXPECT_TRUE(told("What the recording says").contains("bow_follows.flac"));
    const auto exports = shown.exports();
    ASSERT_EQ(exports.size(), 3u);
    for (const gui::Export& one : exports) {
        EXPECT_TRUE(window.write(one, folder.filePath(one.file_name))) << one.name.toStdString();
        EXPECT_GT(QFile(folder.filePath(one.file_name)).size(), 100) << one.file_name.toStdString();
    }
}

/// expects  a message that names the file, and what was shown before to stay
TEST_F(RecordingsPageTest, WhatIsNoRecordingIsTold) {
    gui::RecordingsPage& shown = recordings();
    QFile text(place("letter.wav"));
    ASSERT_TRUE(text.open(QIODevice::WriteOnly));
    text.write("Dear all");
    text.close();
    shown.open(place("letter.wav"));
    QString said;
    ASSERT_TRUE(wait_until([&] {
        if (said.isEmpty()) said = message();
        return !said.isEmpty();
    }));
    EXPECT_TRUE(said.contains("letter.wav")) << said.toStdString();
    EXPECT_EQ(shown.answer(), nullptr);
}

/// expects  a tone held against the selected note in words, and nothing kept
TEST_F(RecordingsPageTest, TellsWhatItHears) {
    gui::RecordingsPage& shown = recordings();
    desk.selection.set_stop(12.0);
    ASSERT_TRUE(wait_until([&] { return desk.bands.band() && desk.bands.band()->stop == 12.0; }));
    const double best = desk.bands.band()->best_brightness;
    ASSERT_GT(best, 1.0);
    gui::HeardSound sound;
    sound.pitch_hz = desk.selection.pitch_hz();
    sound.brightness_f0 = best;
    shown.listening().show_heard(sound);
    EXPECT_TRUE(told("Does it keep its tone").contains("it keeps its tone"));
    sound.brightness_f0 = 0.3 * best;
    shown.listening().show_heard(sound);
    EXPECT_TRUE(told("Does it keep its tone").contains("dull"));
    sound.pitch_hz *= 0.98;
    shown.listening().show_heard(sound);
    EXPECT_TRUE(told("Does it keep its tone").contains("Too low"));
    sound.pitch_hz = 0.0;
    shown.listening().show_heard(sound);
    EXPECT_TRUE(told("Note heard").contains("no clear pitch"));
    EXPECT_TRUE(told("State of the microphone").contains("nothing is stored"));
}

}  // namespace
