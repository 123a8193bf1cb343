// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/instrument.hpp"

#include "gui/model/recent_files.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QSettings>
#include <QTemporaryDir>

#include <sys/resource.h>
#include <csignal>

namespace {

using gui::FieldValue;
using gui::Instrument;

struct InstrumentTest : testing::Test {
    InstrumentTest() {
        QObject::connect(&instrument, &Instrument::refused,
                         [this](const QString& message) { refused.append(message); });
    }
    QString place(const char* name) const { return folder.filePath(name); }

    QTemporaryDir folder;
    Instrument instrument{sim::find_preset("treble_viol")};
    QStringList refused;
};

TEST_F(InstrumentTest, ChangesCanBeTakenBackAndMadeAgain) {
    const auto before = instrument.preset();
    EXPECT_FALSE(instrument.unsaved());
    ASSERT_TRUE(instrument.change({{"/hair_width_mm", FieldValue(8.0), "measured"}}, "hair"));
    EXPECT_TRUE(instrument.unsaved());
    EXPECT_DOUBLE_EQ(instrument.preset()->hair_width, 0.008);
    instrument.undo().undo();
    EXPECT_EQ(*instrument.preset(), *before);
    EXPECT_FALSE(instrument.unsaved());
    instrument.undo().redo();
    EXPECT_DOUBLE_EQ(instrument.preset()->hair_width, 0.008);
}

/// expects  the reader's own words, and nothing changed
TEST_F(InstrumentTest, WhatTheReaderRefusesIsNotDone) {
    const auto before = instrument.preset();
    EXPECT_FALSE(instrument.change({{"/strings/0/pitch", FieldValue(QString("H9")), {}}}, "pitch"));
    ASSERT_EQ(refused.size(), 1);
    EXPECT_TRUE(refused.front().contains("/strings/0/pitch")) << refused.front().toStdString();
    EXPECT_EQ(instrument.preset(), before);
    EXPECT_FALSE(instrument.unsaved());
}

TEST_F(InstrumentTest, WhatIsSavedIsOpenedAgain) {
    ASSERT_TRUE(instrument.change({{"/name", FieldValue(QString("my treble")), {}}}, "name"));
    ASSERT_TRUE(instrument.save(place("mine.json")));
    EXPECT_FALSE(instrument.unsaved());
    EXPECT_EQ(instrument.title(), QString::fromUtf8("my treble – mine.json"));
    Instrument other(sim::find_preset("violin"));
    ASSERT_TRUE(other.open(place("mine.json")));
    EXPECT_EQ(other.preset()->name, "my treble");
    EXPECT_EQ(other.preset()->strings, instrument.preset()->strings);
}

/// expects  for a missing file, for text that is no preset, and for a wrong value: a message that names the file, and
///          the instrument at hand stays with its changes
TEST_F(InstrumentTest, AnUnreadablePresetLeavesTheOneAtHand) {
    ASSERT_TRUE(instrument.change({{"/name", FieldValue(QString("mine")), {}}}, "name"));
    QFile broken(place("broken.json"));
    ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
    broken.write("{ \"format\": 1, ");
    broken.close();
    EXPECT_FALSE(instrument.open(place("broken.json")));
    EXPECT_FALSE(instrument.open(place("missing.json")));
    ASSERT_EQ(refused.size(), 2);
    EXPECT_TRUE(refused[0].contains("broken.json"));
    EXPECT_TRUE(refused[1].contains("missing.json"));
    EXPECT_EQ(instrument.preset()->name, "mine");
    EXPECT_TRUE(instrument.unsaved());
    EXPECT_TRUE(instrument.undo().canUndo());
}

/// A disk on which a file can grow no further than this, as long as it lives.
class FullDisk {
public:
    explicit FullDisk(rlim_t bytes) : heard_(std::signal(SIGXFSZ, SIG_IGN)) {
        getrlimit(RLIMIT_FSIZE, &before_);
        const rlimit full{bytes, before_.rlim_max};
        setrlimit(RLIMIT_FSIZE, &full);
    }
    ~FullDisk() {
        setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, heard_);
    }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;

private:
    void (*heard_)(int);
    rlimit before_{};
};

/// expects  on a full disk: a message, the file that was there untouched, nothing beside it, everything still unsaved
TEST_F(InstrumentTest, AFullDiskLosesNothing) {
    ASSERT_TRUE(instrument.save(place("mine.json")));
    const auto size = QFileInfo(place("mine.json")).size();
    ASSERT_TRUE(instrument.change({{"/name", FieldValue(QString("mine")), {}}}, "name"));
    {
        const FullDisk disk(100);
        EXPECT_FALSE(instrument.save(place("mine.json")));
    }
    ASSERT_EQ(refused.size(), 1);
    EXPECT_TRUE(refused.front().contains("mine.json")) << refused.front().toStdString();
    EXPECT_EQ(QFileInfo(place("mine.json")).size(), size);
    EXPECT_EQ(QDir(folder.path()).entryList(QDir::Files).size(), 1);
    EXPECT_TRUE(instrument.unsaved());
    EXPECT_EQ(instrument.preset()->name, "mine");
}

/// expects  where there is no such folder: a message, everything still unsaved, and another place takes it
TEST_F(InstrumentTest, AFileThatCantBeWrittenLosesNothing) {
    ASSERT_TRUE(instrument.change({{"/name", FieldValue(QString("mine")), {}}}, "name"));
    EXPECT_FALSE(instrument.save(place("no_such_folder/mine.json")));
    ASSERT_EQ(refused.size(), 1);
    EXPECT_TRUE(refused.front().contains("no_such_folder")) << refused.front().toStdString();
    EXPECT_TRUE(instrument.unsaved());
    EXPECT_EQ(instrument.preset()->name, "mine");
    EXPECT_TRUE(instrument.save(place("mine.json")));
}

TEST_F(InstrumentTest, RecentFilesAreTheNewestThatAreStillThere) {
    QSettings settings(place("settings.ini"), QSettings::IniFormat);
    gui::RecentFiles recent(settings);
    for (int i = 0; i < gui::RecentFiles::most + 3; ++i) {
        const QString file = place(qPrintable(QString("p%1.json").arg(i)));
        ASSERT_TRUE(instrument.save(file));
        recent.add(file);
    }
    ASSERT_EQ(recent.files().size(), gui::RecentFiles::most);
    EXPECT_TRUE(recent.files().front().endsWith("p10.json"));
    recent.add(place("p5.json"));
    EXPECT_TRUE(recent.files().front().endsWith("p5.json"));
    EXPECT_EQ(recent.files().size(), gui::RecentFiles::most);
    QFile::remove(place("p5.json"));
    EXPECT_FALSE(recent.files().contains(place("p5.json")));
}

TEST(ShippedPresetsListTest, HoldsAllTwelveByName) {
    const auto presets = gui::shipped();
    ASSERT_EQ(presets.size(), 12u);
    EXPECT_EQ(presets.front().name, "alto viol");
}

}  // namespace
