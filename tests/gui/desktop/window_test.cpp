// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/bow_pad.hpp"
#include "gui/view/hear_page.hpp"
#include "gui/view/stage_handles.hpp"
#include "gui/view/stage_view.hpp"
#include "tests/gui/desktop/window_tools.hpp"

#include <QAbstractButton>
#include <QAbstractSpinBox>
#include <QDropEvent>
#include <QFile>
#include <QLabel>
#include <QMimeData>
#include <QPrinter>
#include <QTabBar>
#include <QTest>

#include <algorithm>
#include <set>

namespace {

using gui::Page;
using tests::wait_until;
using tests::WindowTest;

/// What a reader of the screen would say of a control; empty: nothing.
QString spoken(const QWidget& control) {
    if (!control.accessibleName().isEmpty()) return control.accessibleName();
    if (const auto* button = qobject_cast<const QAbstractButton*>(&control)) return button->text();
    return {};
}

/// Parts of a control that speak for it are not controls themselves.
bool is_inner_part(const QWidget& widget) {
    return qobject_cast<const QAbstractSpinBox*>(widget.parentWidget()) != nullptr ||
           qobject_cast<const QTabBar*>(&widget) != nullptr || widget.objectName().startsWith("qt_");
}

/// expects  on every page: each control that takes the focus has a name to be spoken
TEST_F(WindowTest, EveryControlHasAName) {
    for (std::size_t i = 0; i < window.pages().size(); ++i) {
        window.show_page(static_cast<int>(i));
        for (const QWidget* control : window.findChildren<QWidget*>()) {
            if (!(control->focusPolicy() & Qt::TabFocus) || !control->isVisible() || is_inner_part(*control)) continue;
            EXPECT_FALSE(spoken(*control).isEmpty())
                << control->metaObject()->className() << " on page " << i << " " << control->objectName().toStdString();
        }
    }
}

/// expects  on every page: going on by Tab from the stage visits every control that takes the focus
TEST_F(WindowTest, TheTabKeyReachesEverything) {
    for (std::size_t i = 0; i < window.pages().size(); ++i) {
        window.show_page(static_cast<int>(i));
        std::set<const QWidget*> visited;
        const QWidget* at = &window;
        do {
            visited.insert(at);
            at = at->nextInFocusChain();
        } while (at != &window);
        for (const QWidget* control : window.findChildren<QWidget*>())
            if ((control->focusPolicy() & Qt::TabFocus) && control->isVisible()) {
                EXPECT_TRUE(visited.contains(control)) << control->metaObject()->className();
            }
    }
}

/// expects  the finger and the bow follow the mouse, and the band follows the finger
TEST_F(WindowTest, FingerAndBowAreDragged) {
    auto* finger = window.findChild<gui::FingerHandle*>();
    auto* bow = window.findChild<gui::BowHandle*>();
    const gui::StageScale scale = window.stage().scale();
    QTest::mousePress(finger, Qt::LeftButton, {}, finger->rect().center());
    const QPointF octave(scale.x(desk.selection.open_length() / 2.0), finger->geometry().center().y());
    emit finger->dragged(octave);
    EXPECT_NEAR(desk.selection.stop(), 12.0, 0.2);
    ASSERT_TRUE(wait_until([&] { return desk.bands.band() && desk.bands.band()->stop == desk.selection.stop(); }));
    const double before = desk.selection.force();
    emit bow->dragged(QPointF(scale.x(0.06), window.stage().bow_place().y() - 20.0));
    EXPECT_NEAR(desk.selection.contact(), 0.06, 0.001);
    EXPECT_GT(desk.selection.force(), before);
}

/// expects  arrow keys on finger, bow and pad do what the mouse does; B and F are heard from anywhere
TEST_F(WindowTest, KeysDoWhatTheMouseDoes) {
    auto* finger = window.findChild<gui::FingerHandle*>();
    auto* bow = window.findChild<gui::BowHandle*>();
    QTest::keyClick(finger, Qt::Key_Right);
    QTest::keyClick(finger, Qt::Key_Right);
    EXPECT_DOUBLE_EQ(desk.selection.stop(), 2.0);
    const double place = desk.selection.contact();
    QTest::keyClick(bow, Qt::Key_Right);
    EXPECT_NEAR(desk.selection.contact(), place - 0.001, 1e-4);
    const double force = desk.selection.force();
    QTest::keyClick(bow, Qt::Key_Up);
    EXPECT_GT(desk.selection.force(), force);
    auto* pad = window.findChild<gui::BowPad*>();
    QTest::keyClick(pad, Qt::Key_Down);
    EXPECT_NEAR(desk.selection.force(), force, 1e-9);
    QTest::keyClick(&window, Qt::Key_F);
    EXPECT_EQ(desk.selection.bow_way(), gui::BowWay::follows);
    QTest::keyClick(&window, Qt::Key_F);
    EXPECT_EQ(desk.selection.bow_way(), gui::BowWay::left_behind);
}

/// expects  of the window's page: every export whole, and the page on paper
TEST_F(WindowTest, APageIsExportedAndPrinted) {
    desk.selection.set_stop(19.0);
    Page* note = page("window of the note");
    ASSERT_NE(note, nullptr);
    EXPECT_TRUE(note->exports().empty());
    ASSERT_TRUE(wait_until([&] { return desk.window.answer() && note->can_print(); }));
    const auto exports = note->exports();
    ASSERT_EQ(exports.size(), 4u);
    for (const gui::Export& one : exports) {
        EXPECT_TRUE(window.write(one, folder.filePath(one.file_name))) << one.name.toStdString();
        EXPECT_GT(QFile(folder.filePath(one.file_name)).size(), 100) << one.file_name.toStdString();
    }
    for (const char* name : {"window.svg", "window.pdf"}) {
        EXPECT_TRUE(window.write(exports.front(), place(name)));
        EXPECT_GT(QFile(place(name)).size(), 1000);
    }
    QPrinter paper;
    paper.setOutputFormat(QPrinter::PdfFormat);
    paper.setOutputFileName(place("printed.pdf"));
    window.print_page(paper);
    QFile printed(place("printed.pdf"));
    ASSERT_TRUE(printed.open(QIODevice::ReadOnly));
    EXPECT_TRUE(printed.readAll().startsWith("%PDF"));
    EXPECT_GT(printed.size(), 5000);
}

/// expects  where a file can't be written: a message, no file, nothing changed
TEST_F(WindowTest, AnExportThatFailsSaysSo) {
    Page* mine = page("instrument");
    ASSERT_NE(mine, nullptr);
    EXPECT_FALSE(window.write(mine->exports().front(), place("nowhere/mine.json")));
    const QString said = message();
    EXPECT_TRUE(said.contains("Nothing was written")) << said.toStdString();
    EXPECT_TRUE(said.contains("nowhere")) << said.toStdString();
}

/// expects  an unreadable preset leaves the instrument at hand, with a message that names the file
TEST_F(WindowTest, AnUnreadablePresetIsToldAndNothingIsLost) {
    QFile broken(place("broken.json"));
    ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
    broken.write("no preset");
    broken.close();
    EXPECT_FALSE(window.open(place("broken.json")));
    EXPECT_TRUE(message().contains("broken.json"));
    EXPECT_EQ(desk.selection.preset()->name, "division bass viol");
}

/// expects  unsaved changes are kept at Cancel, given up at Discard; dropping a file opens it
TEST_F(WindowTest, UnsavedChangesAreGuarded) {
    gui::Instrument other(sim::find_preset("violin"));
    ASSERT_TRUE(other.save(place("violin.json")));
    ASSERT_TRUE(desk.instrument.change({{"/name", gui::FieldValue(QString("mine")), {}}}, "name"));
    EXPECT_TRUE(window.isWindowModified());
    answer_next(QMessageBox::Cancel);
    EXPECT_FALSE(window.open(place("violin.json")));
    answer_next(QMessageBox::Cancel);
    EXPECT_FALSE(window.close());
    EXPECT_EQ(desk.instrument.preset()->name, "mine");
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(place("violin.json"))});
    QDropEvent drop(QPointF(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    answer_next(QMessageBox::Discard);
    static_cast<QObject&>(window).event(&drop);  // as the window system would
    EXPECT_EQ(desk.selection.preset()->name, "violin, modern strings");
    EXPECT_TRUE(desk.recent.files().front().endsWith("violin.json"));
}

/// expects  without a sound device: a sentence for a player, and a bow that is off again
TEST_F(WindowTest, WithoutASoundDeviceThereIsASentence) {
    desk.takes.play({std::vector<double>(4800, 0.0), 48000.0});
    const bool has_device = desk.takes.playing();
    desk.takes.stop();
    if (has_device) GTEST_SKIP() << "this machine has a sound device";
    const QString said = message();
    EXPECT_TRUE(said.contains("sound device")) << said.toStdString();
    QTest::keyClick(&window, Qt::Key_B);
    wait_until([&] { return !desk.live.sounding(); });
    EXPECT_FALSE(desk.live.sounding());
}

/// expects  the first steps stand in the pages' place until they are done
TEST_F(WindowTest, TheFirstStepsComeAndGo) {
    window.show_first_steps();
    EXPECT_TRUE(wait_until([&] {
        const auto labels = window.findChildren<QLabel*>();
        return std::ranges::any_of(
            labels, [](const QLabel* label) { return label->isVisible() && label->text().contains("Start low"); });
    }));
    QTest::keyClick(window.focusWidget(), Qt::Key_Escape);
    EXPECT_TRUE(wait_until([&] { return window.pages().front()->isVisible(); }));
}

}  // namespace
