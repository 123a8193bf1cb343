// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/recordings_page.hpp"
#include "gui/view/listening_panel.hpp"
#include "sim/demo_recordings.hpp"
#include "tests/gui/desktop/window_tools.hpp"
#include "tests/match/one_stroke.hpp"

#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QProgressBar>
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
    /// The button or box of those words or that spoken name.
    QPushButton& button(const QString& words) {
        for (QPushButton* one : recordings().findChildren<QPushButton*>())
            if (one->text().remove('&') == words) return *one;
        throw std::runtime_error("no button " + words.toStdString());
    }
    QComboBox& box(const QString& name) {
        for (QComboBox* one : recordings().findChildren<QComboBox*>())
            if (one->accessibleName() == name) return *one;
        throw std::runtime_error("no box " + name.toStdString());
    }
    QTableView& table(const QString& name) {
        for (QTableView* one : recordings().findChildren<QTableView*>())
            if (one->accessibleName() == name) return *one;
        throw std::runtime_error("no table " + name.toStdString());
    }
    /// Opens one stroke on the octave, 35 mm from the bridge, to be looked for coarsely.
    gui::RecordingsPage& open_stroke() {
        gui::RecordingsPage& shown = recordings();
        tests::put_stroke(place("a.wav").toStdString());
        shown.set_match_grid({.contact_points = 24, .forces = 8});
        shown.open(place("a.wav"));
        EXPECT_TRUE(wait_until([&] { return shown.answer() != nullptr; }));
        desk.selection.set_stop(12.0);
        box("Where the notes are looked for").setCurrentIndex(1);
        return shown;
    }
    /// The next message, once there is one.
    QString next_message() {
        QString said;
        wait_until([&] {
            if (said.isEmpty()) said = message();
            return !said.isEmpty();
        });
        return said;
    }
};

/// expects  notes, words and chart of a demonstration, and every export whole
TEST_F(RecordingsPageTest, ShowsAndExportsARecording) {
    gui::RecordingsPage& shown = recordings();
    EXPECT_TRUE(shown.exports().empty());
    shown.open(QString::fromStdString(sim::find_recording("bow_follows.flac").string()));
    ASSERT_TRUE(wait_until([&] { return shown.answer() != nullptr; }));
    EXPECT_TRUE(shown.can_print());
    EXPECT_GT(table("Notes of the recording").model()->rowCount(), 0);
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

/// expects  progress while the bow is looked for, then the note with its words, chart and line, and every export whole
TEST_F(RecordingsPageTest, FindsTheBow) {
    gui::RecordingsPage& shown = open_stroke();
    const auto& chart = *shown.findChild<gui::ChartView*>();
    auto* progress = shown.findChild<QProgressBar*>();
    double most = 0.0;
    QObject::connect(progress, &QProgressBar::valueChanged, [&](int value) { most = std::max(most, 1.0 * value); });
    button("Where was the bow?").click();
    EXPECT_TRUE(wait_until([&] { return progress->isVisible() || shown.match() != nullptr; }));
    ASSERT_TRUE(wait_until([&] { return shown.match() != nullptr && !progress->isVisible(); }));
    EXPECT_GT(most, 0.0);
    EXPECT_EQ(box("What is shown").currentText(), "1: D5 on string 1, stop 12");
    EXPECT_TRUE(told("What the recording says").contains("Note 1: D5 on string 1, stop 12: bowed "));
    EXPECT_TRUE(std::holds_alternative<gui::charts::MatchChart>(chart.chart()));
    button("As a table").click();
    QTableView& lines = table("Where the bow was, note by note");
    EXPECT_TRUE(lines.isVisible());
    EXPECT_EQ(lines.model()->rowCount(), 1);
    EXPECT_EQ(lines.currentIndex().row(), 0);
    const auto exports = shown.exports();
    ASSERT_EQ(exports.size(), 6u);
    for (const gui::Export& one : exports) {
        EXPECT_TRUE(window.write(one, folder.filePath(one.file_name))) << one.name.toStdString();
        EXPECT_GT(QFile(folder.filePath(one.file_name)).size(), 100) << one.file_name.toStdString();
    }
    box("What is shown").setCurrentIndex(0);
    EXPECT_TRUE(table("Notes of the recording").isVisible());
    EXPECT_TRUE(std::holds_alternative<gui::charts::RecordingChart>(chart.chart()));
    EXPECT_TRUE(told("What the recording says").contains("against division bass viol. Notes bowed"));
}

/// expects  a line that says what to do, and no work
TEST_F(RecordingsPageTest, AsksForARecordingFirst) {
    gui::RecordingsPage& shown = recordings();
    button("Where was the bow?").click();
    EXPECT_TRUE(told("What the recording says").contains("There is no recording yet"));
    EXPECT_FALSE(button("Cancel").isVisible());
    EXPECT_EQ(shown.match(), nullptr);
}

/// expects  nothing found and nothing said of it; what was shown before stays, and it can be asked again
TEST_F(RecordingsPageTest, LooksForTheBowNoLongerWhenCancelled) {
    gui::RecordingsPage& shown = open_stroke();
    shown.set_match_grid({.contact_points = 400, .forces = 64});
    button("Where was the bow?").click();
    EXPECT_FALSE(button("Where was the bow?").isEnabled());
    ASSERT_TRUE(wait_until([&] { return button("Cancel").isVisible(); }));
    button("Cancel").click();
    ASSERT_TRUE(wait_until([&] { return button("Where was the bow?").isEnabled(); }));
    EXPECT_EQ(shown.match(), nullptr);
    EXPECT_TRUE(told("What the recording says").contains("a.wav"));
}

/// expects  one line that names the file that is gone, and the recording to stay on show
TEST_F(RecordingsPageTest, ARecordingThatIsGoneIsTold) {
    gui::RecordingsPage& shown = open_stroke();
    ASSERT_TRUE(QFile::remove(place("a.wav")));
    button("Where was the bow?").click();
    const QString said = next_message();
    EXPECT_TRUE(said.contains("a.wav: is no longer there")) << said.toStdString();
    EXPECT_EQ(said.count('\n'), 0);
    EXPECT_NE(shown.answer(), nullptr);
    EXPECT_EQ(shown.match(), nullptr);
}

/// expects  the answer of the recording before to go with it
TEST_F(RecordingsPageTest, AnotherRecordingHasNoAnswerYet) {
    gui::RecordingsPage& shown = open_stroke();
    shown.set_match_grid({.contact_points = 5, .forces = 3});
    button("Where was the bow?").click();
    ASSERT_TRUE(wait_until([&] { return shown.match() != nullptr; }));
    const auto before = shown.answer();
    shown.open(place("a.wav"));
    ASSERT_TRUE(wait_until([&] { return shown.answer() != before; }));
    EXPECT_EQ(shown.match(), nullptr);
    EXPECT_EQ(box("What is shown").count(), 1);
    EXPECT_EQ(shown.exports().size(), 3u);
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
