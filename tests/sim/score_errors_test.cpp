// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/read_tune.hpp"

#include "analysis/errors.hpp"
#include "tests/analysis/temporary_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <zip.h>

#include <random>

namespace {

using namespace sim::score;
using testing::HasSubstr;

std::string error_of(const auto& act) {
    try {
        act();
    } catch (const analysis::InputError& error) {
        return error.what();
    }
    return "no error";
}

struct Bad {
    const char* title;
    std::string text;
    std::vector<const char*> said;
};
void PrintTo(const Bad& bad, std::ostream* out) { *out << bad.title; }

class BadWordsTest : public testing::TestWithParam<Bad> {};
TEST_P(BadWordsTest, AreToldInOneLine) {
    const std::string error = error_of([] { parse_tune(GetParam().text, "TUNE"); });
    for (const char* said : GetParam().said) EXPECT_THAT(error, HasSubstr(said));
    EXPECT_EQ(error.find('\n'), std::string::npos);
}
INSTANTIATE_TEST_SUITE_P(
    Words, BadWordsTest,
    testing::Values(Bad{"Nothing", "", {"no note"}}, Bad{"OnlyRests", "r:1 r:2", {"no note"}},
                    Bad{"NoNote", "D4:1 H4:1", {"word 2", "\"H4:1\"", "F#4:1/2"}},
                    Bad{"LengthZero", "D4:0", {"length", "0.001 to 1000"}}, Bad{"LengthHuge", "D4:1e9", {"length"}},
                    Bad{"LengthByZero", "D4:1/0", {"length"}}, Bad{"LengthNoNumber", "D4:x", {"length"}},
                    Bad{"FifthFinger", "D4:1,finger=5", {"finger=0 to 4"}},
                    Bad{"UnknownMark", "D4:1,thumb=1", {"string=NAME"}},
                    Bad{"UnknownSetting", "pace=3 D4", {"tempo, beats, upbeat, dynamic"}},
                    Bad{"TempoZero", "tempo=0 D4", {"5 to 1000"}}, Bad{"Metre", "beats=3/5 D4", {"3/4 or 6/8"}},
                    Bad{"MetreInTheBar", "D4:1 beats=3/4 E4", {"beginning of a bar"}},
                    Bad{"Dynamic", "dynamic=loud D4", {"ppp"}}, Bad{"OtherLine", "D4:1\nE4:1 X", {"line 2", "word 2"}}),
    [](const auto& bad) { return std::string(bad.param.title); });

std::string score_of(const std::string& bar) {
    return "<score-partwise><part-list><score-part id=\"P1\"><part-name>V</part-name></score-part></part-list><part "
           "id=\"P1\"><measure number=\"7\">" +
           bar + "</measure></part></score-partwise>";
}
std::string note_of(const std::string& duration, const std::string& pitch = "<step>D</step><octave>4</octave>") {
    return "<note><pitch>" + pitch + "</pitch><duration>" + duration + "</duration></note>";
}

class BadScoreTest : public testing::TestWithParam<Bad> {};
TEST_P(BadScoreTest, IsToldInOneLine) {
    const std::string error = error_of([] { read_musicxml(GetParam().text, "a.musicxml"); });
    EXPECT_THAT(error, testing::StartsWith("a.musicxml"));
    for (const char* said : GetParam().said) EXPECT_THAT(error, HasSubstr(said));
    EXPECT_EQ(error.find('\n'), std::string::npos);
}
INSTANTIATE_TEST_SUITE_P(
    Scores, BadScoreTest,
    testing::Values(
        Bad{"Empty", "", {"well-formed"}}, Bad{"NoXml", "once upon a time", {"well-formed"}},
        Bad{"Malformed", "<score-partwise>\n<part-list>\n</part>", {"line 3", "well-formed"}},
        Bad{"OtherXml", "<html><body/></html>", {"<html>", "score-partwise"}},
        Bad{"NoNotes", score_of("<note><rest/><duration>4</duration></note>"), {"no notes with a pitch"}},
        Bad{"EntityBomb",
            "<!DOCTYPE score-partwise [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;\">]>" +
                score_of(note_of("1")),
            {"DOCTYPE"}},
        Bad{"OutsideEntity",
            "<!DOCTYPE score-partwise [<!ENTITY x SYSTEM \"file:///etc/passwd\">]>" + score_of(note_of("1")),
            {"DOCTYPE"}},
        Bad{"HugeDuration", score_of(note_of("1e300")), {"bar 7", "note 1", "1000 quarter notes"}},
        Bad{"NegativeDuration", score_of(note_of("-4")), {"bar 7", "<duration>"}},
        Bad{"NoDuration", score_of("<note><pitch><step>D</step><octave>4</octave></pitch></note>"), {"<duration>"}},
        Bad{"DurationZero", score_of(note_of("0")), {"longer than 0"}},
        Bad{"DivisionsZero",
            score_of("<attributes><divisions>0</divisions></attributes>" + note_of("1")),
            {"<divisions>"}},
        Bad{"StepH", score_of(note_of("1", "<step>H</step><octave>4</octave>")), {"<pitch>"}},
        Bad{"QuarterTone",
            score_of(note_of("1", "<step>D</step><alter>0.5</alter><octave>4</octave>")),
            {"whole semitones"}},
        Bad{"BackTooFar", score_of(note_of("1") + "<backup><duration>9</duration></backup>"), {"<backup>"}},
        Bad{"TwoAtOnce",
            score_of(note_of("2") + "<backup><duration>1</duration></backup>" + note_of("1")),
            {"note 2", "at once"}},
        Bad{"Tempo", score_of("<sound tempo=\"1e9\"/>" + note_of("1")), {"tempo"}}),
    [](const auto& bad) { return std::string(bad.param.title); });

TEST(ScoreLimitsTest, TooManyNotesAreRefused) {
    std::string bars;
    for (int i = 0; i < 20'100; ++i) bars += note_of("1");
    EXPECT_THAT(error_of([&] { read_musicxml(score_of(bars), "a"); }),
                testing::AnyOf(HasSubstr("20000 notes"), HasSubstr("100000")));
}

/// expects  elements nested a million deep to be refused, and no stack to run over
TEST(ScoreLimitsTest, DeepNestingIsNoHarm) {
    std::string text;
    for (int i = 0; i < 1'000'000; ++i) text += "<a>";
    EXPECT_THAT(error_of([&] { read_musicxml(text, "a"); }), HasSubstr("well-formed"));
    for (int i = 0; i < 1'000'000; ++i) text += "</a>";
    EXPECT_THAT(error_of([&] { read_musicxml(text, "a"); }), HasSubstr("<a>"));
}

/// An archive of these files.
std::string archive_of(const std::filesystem::path& place,
                       const std::vector<std::pair<std::string, std::string>>& files) {
    zip_t* zip = zip_open(place.c_str(), ZIP_CREATE | ZIP_TRUNCATE, nullptr);
    for (const auto& [name, text] : files)
        zip_file_add(zip, name.c_str(), zip_source_buffer(zip, text.data(), text.size(), 0), ZIP_FL_OVERWRITE);
    zip_close(zip);
    return tests::contents(place);
}

TEST(CompressedScoreTest, ContainerLeadsToTheScore) {
    const tests::TemporaryFolder folder;
    const std::string container = "<container><rootfiles><rootfile full-path=\"in/side.xml\"/></rootfiles></container>";
    const std::string bytes =
        archive_of(folder / "a.mxl", {{"META-INF/container.xml", container}, {"in/side.xml", score_of(note_of("1"))}});
    EXPECT_EQ(unpacked_musicxml(bytes, "a.mxl"), score_of(note_of("1")));
    EXPECT_EQ(read_tune((folder / "a.mxl").string()).tune.notes.size(), 1U);
}

TEST(CompressedScoreTest, BadArchivesAreRefused) {
    const tests::TemporaryFolder folder;
    const auto said = [&](const std::string& bytes) { return error_of([&] { unpacked_musicxml(bytes, "a.mxl"); }); };
    EXPECT_THAT(said("PK\3\4 nothing"), HasSubstr("can't be opened"));
    EXPECT_THAT(said(archive_of(folder / "b.mxl", {{"score.xml", "x"}})), HasSubstr("container.xml"));
    EXPECT_THAT(said(archive_of(folder / "c.mxl", {{"META-INF/container.xml", "<container/>"}})),
                HasSubstr("names no"));
    const std::string container = "<container><rootfiles><rootfile full-path=\"s.xml\"/></rootfiles></container>";
    EXPECT_THAT(said(archive_of(folder / "d.mxl", {{"META-INF/container.xml", container}})), HasSubstr("s.xml"));
    // a hundred megabytes of blanks in a hundred kilobytes
    const std::string bomb =
        archive_of(folder / "e.mxl", {{"META-INF/container.xml", container}, {"s.xml", std::string(100'000'000, ' ')}});
    EXPECT_LT(bomb.size(), 1'000'000U);
    EXPECT_THAT(said(bomb), HasSubstr("larger than 20 MB"));
}

/// A MIDI file of one track, format 0, 96 ticks a quarter.
std::string midi_of(std::initializer_list<int> events) {
    std::string track;
    for (const int byte : events) track += static_cast<char>(byte);
    std::string file("MThd\0\0\0\6\0\0\0\1\0\x60MTrk\0\0", 20);
    file += static_cast<char>(track.size() >> 8U);
    file += static_cast<char>(track.size() & 255U);
    return file + track;
}

TEST(MidiTest, NotesTemposAndKeysAreRead) {
    const ReadTune tune =
        read_midi(midi_of({0,    0xff, 0x59, 2,   0xfd, 0,              // three flats
                           0,    0xff, 0x51, 3,   0x0f, 0x42, 0x40,     // 60 a minute
                           0,    0xff, 0x58, 4,   3,    2,    24,   8,  // 3/4
                           0,    0x90, 63,   80,  0x60, 63,   0,        // E flat, running status, velocity 0 ends
                           0,    0x90, 68,   112, 0x62, 70,   64,   2, 68, 0,  // A flat held two ticks into B flat
                           0x60, 70,   0,    0,   0xff, 0x2f, 0}),
                  "a.mid");
    ASSERT_EQ(tune.tune.notes.size(), 3U);
    EXPECT_EQ(spelling_name(tune.tune.notes[0].spelling), "Eb4");
    EXPECT_EQ(spelling_name(tune.tune.notes[1].spelling), "Ab4");
    EXPECT_EQ(tune.tune.notes[0].dynamic, "mf");
    EXPECT_EQ(tune.tune.notes[1].dynamic, "ff");
    EXPECT_DOUBLE_EQ(tune.tune.notes[1].start, 1.0);
    EXPECT_DOUBLE_EQ(tune.tune.tempos[0].quarters_a_minute, 60.0);
    EXPECT_EQ(tune.tune.metres[0].beats, 3);
    EXPECT_THAT(tune.remarks, testing::ElementsAre(HasSubstr("held a little")));
}

TEST(MidiTest, BadFilesAreRefused) {
    const auto said = [](const std::string& bytes) { return error_of([&] { read_midi(bytes, "a.mid"); }); };
    EXPECT_THAT(said(""), HasSubstr("breaks off"));
    EXPECT_THAT(said("RIFFxxxx"), HasSubstr("no standard MIDI"));
    EXPECT_THAT(said(midi_of({0, 0xff, 0x2f, 0})), HasSubstr("no notes"));
    EXPECT_THAT(said(midi_of({0, 0x90, 60, 80, 0, 0x90, 64, 80, 0x60, 60, 0, 0, 64, 0})), HasSubstr("sounds together"));
    EXPECT_THAT(said(midi_of({0, 60, 80})), HasSubstr("no status"));
    EXPECT_THAT(said(midi_of({0, 0x90, 60})), HasSubstr("breaks off"));
    EXPECT_THAT(said(midi_of({0, 0xff, 0x51, 0xff, 0xff, 0xff, 0x7f})), HasSubstr("breaks off"));
    EXPECT_THAT(said(midi_of({0xff, 0xff, 0xff, 0xff, 0x7f})), HasSubstr("four bytes"));
    std::string frames = midi_of({0, 0x90, 60, 80, 0x60, 60, 0});
    frames[12] = static_cast<char>(0xe8);
    EXPECT_THAT(said(frames), HasSubstr("film frames"));
}

/// expects  damaged files of every kind to be read or refused, never worse
TEST(DamagedFilesTest, AreReadOrRefused) {
    std::mt19937 random(3);
    for (const char* name : {"from_abc.mid", "from_engraver.mid", "from_abc.mxl", "from_engraver.musicxml"}) {
        const std::string whole = tests::contents(std::filesystem::path(BOWBAND_TUNES) / name);
        ASSERT_FALSE(whole.empty());
        for (int k = 0; k < 300; ++k) {
            std::string bytes = whole;
            for (int hits = 0; hits <= k % 4; ++hits) bytes[random() % bytes.size()] = static_cast<char>(random());
            if (k % 3 == 0) bytes.resize(random() % bytes.size());
            const std::string ending = std::filesystem::path(name).extension().string();
            error_of([&] {
                if (ending == ".mid") return read_midi(bytes, name);
                return read_musicxml(ending == ".mxl" ? unpacked_musicxml(bytes, name) : bytes, name);
            });
        }
    }
}

}  // namespace
