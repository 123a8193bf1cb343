// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/score/read_tune.hpp"

#include "analysis/errors.hpp"
#include "sim/score/change_tune.hpp"
#include "sim/score/write_musicxml.hpp"
#include "tests/analysis/temporary_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <random>

namespace {

using namespace sim::score;
using testing::HasSubstr;

std::vector<std::string> names_of(const Tune& tune) {
    std::vector<std::string> names;
    for (const TuneNote& note : tune.notes) names.push_back(spelling_name(note.spelling));
    return names;
}

/// A score of one part around these bars; divisions of 2 a quarter unless they say otherwise.
std::string score_of(const std::string& bars) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<score-partwise version=\"4.0\"><part-list><score-part "
           "id=\"P1\"><part-name>Viol"
           "</part-name></score-part></part-list><part id=\"P1\">" +
           bars + "</part></score-partwise>";
}
std::string bar(int number, const std::string& content) {
    return "<measure number=\"" + std::to_string(number) + "\">" + content + "</measure>";
}
std::string attributes(const std::string& more = "") {
    return "<attributes><divisions>2</divisions>" + more +
           "<time><beats>3</beats><beat-type>4</beat-type></time></attributes>";
}
std::string note(const std::string& step, int octave, int duration, const std::string& more = "",
                 const std::string& before = "") {
    return "<note>" + before + "<pitch><step>" + step + "</step><octave>" + std::to_string(octave) +
           "</octave></pitch><duration>" + std::to_string(duration) + "</duration>" + more + "</note>";
}
ReadTune read(const std::string& bars) { return read_musicxml(score_of(bars), "test.musicxml"); }

/// Notes that sound alike: pitch, time, place in the bar, dynamic.
void expect_same_notes(const Tune& a, const Tune& b, double margin) {
    ASSERT_EQ(a.notes.size(), b.notes.size());
    for (std::size_t i = 0; i < a.notes.size(); ++i) {
        EXPECT_EQ(a.notes[i].spelling, b.notes[i].spelling) << i;
        EXPECT_NEAR(a.notes[i].start, b.notes[i].start, margin) << i;
        EXPECT_NEAR(a.notes[i].duration, b.notes[i].duration, margin) << i;
        EXPECT_EQ(a.notes[i].bar, b.notes[i].bar) << i;
        EXPECT_EQ(a.notes[i].stress, b.notes[i].stress) << i;
        EXPECT_EQ(a.notes[i].dynamic, b.notes[i].dynamic) << i;
    }
}

TEST(TuneTest, WordsAreRead) {
    const Tune tune = parse_tune(
        "beats=3/4 upbeat=1 tempo=90 dynamic=p\nD4:1 | Eb4:1/2,string=2,finger=3 F#4 r:1 G4:0.75 dynamic=f A4:1/4",
        "test");
    EXPECT_EQ(names_of(tune), (std::vector<std::string>{"D4", "Eb4", "F#4", "G4", "A4"}));
    EXPECT_EQ(tune.notes[0].bar, 0);
    EXPECT_EQ(tune.notes[1].bar, 1);
    EXPECT_EQ(tune.notes[1].stress, Stress::downbeat);
    EXPECT_EQ(tune.notes[2].stress, Stress::offbeat);
    EXPECT_EQ(tune.notes[1].string, "2");
    EXPECT_EQ(tune.notes[1].finger, 3);
    EXPECT_EQ(tune.notes[2].duration, 0.5);
    EXPECT_EQ(tune.notes[3].start, 3.0);
    EXPECT_EQ(tune.notes[4].dynamic, "f");
    EXPECT_NEAR(seconds_at(tune, 3.0), 2.0, 1e-12);
}

/// expects  a dotted quarter as the beat of 6/8
TEST(TuneTest, CompoundMetresHaveLongBeats) {
    const Tune tune = parse_tune("beats=6/8 D4:1/2 E4 F4 G4 A4 B4 C5", "test");
    EXPECT_EQ(tune.notes[3].stress, Stress::beat);
    EXPECT_EQ(tune.notes[2].stress, Stress::offbeat);
    EXPECT_EQ(tune.notes[6].stress, Stress::downbeat);
    EXPECT_EQ(tune.notes[6].bar, 2);
}

TEST(TuneTest, TimeFollowsTheTempos) {
    const Tune tune = parse_tune("tempo=60 D4:2 tempo=120 E4:4", "test");
    EXPECT_DOUBLE_EQ(seconds_at(tune, 2.0), 2.0);
    EXPECT_DOUBLE_EQ(seconds_at(tune, 6.0), 4.0);
    EXPECT_DOUBLE_EQ(seconds_at(at_tempo(tune, 30.0), 6.0), 12.0);
}

TEST(TuneTest, FingersAreFixedAfterwards) {
    const Tune tune =
        with_fingers(parse_tune("beats=2/4 D4:1 E4 F4 G4", "test"), "2.1,string=1,finger=4 1.2,finger=1", "--fingers");
    EXPECT_EQ(tune.notes[2].string, "1");
    EXPECT_EQ(tune.notes[2].finger, 4);
    EXPECT_EQ(tune.notes[1].finger, 1);
    for (const char* wrong : {"2.3,finger=1", "9.1,finger=1", "x,finger=1", "1.1", "1.1,finger=7", "1.1,thumb=1"})
        EXPECT_THROW(with_fingers(tune, wrong, "--fingers"), analysis::InputError) << wrong;
}

TEST(MusicXmlTest, TiesDivisionsAndDynamicsAreRead) {
    const ReadTune tune =
        read(bar(1, attributes() +
                        "<direction><direction-type><dynamics><mf/></dynamics></direction-type><sound "
                        "tempo=\"72\"/></direction>" +
                        note("D", 4, 2) + note("E", 4, 4, "<tie type=\"start\"/>")) +
             bar(2, "<attributes><divisions>6</divisions></attributes>" + note("E", 4, 6, "<tie type=\"stop\"/>") +
                        "<note><rest/><duration>6</duration></note>" + note("F", 4, 4) + note("G", 4, 2)));
    EXPECT_EQ(names_of(tune.tune), (std::vector<std::string>{"D4", "E4", "F4", "G4"}));
    EXPECT_DOUBLE_EQ(tune.tune.notes[1].duration, 3.0);
    EXPECT_DOUBLE_EQ(tune.tune.notes[2].start, 5.0);
    EXPECT_NEAR(tune.tune.notes[2].duration, 2.0 / 3.0, 1e-12);
    EXPECT_EQ(tune.tune.notes[0].dynamic, "mf");
    EXPECT_EQ(tune.tune.tempos, (std::vector<Tempo>{{0.0, 72.0}}));
    EXPECT_THAT(tune.remarks, testing::IsEmpty());
}

TEST(MusicXmlTest, WhatIsLeftOutIsTold) {
    const ReadTune tune = read(
        bar(1, attributes() + "<note><grace/><pitch><step>C</step><octave>5</octave></pitch><voice>1</voice></note>" +
                   note("D", 4, 2, "<voice>1</voice>") + note("A", 4, 2, "<voice>1</voice>", "<chord/>") +
                   note("E", 4, 4, "<voice>1</voice>") + "<backup><duration>6</duration></backup>" +
                   note("D", 3, 6, "<voice>2</voice>") +
                   "<barline location=\"right\"><repeat direction=\"backward\"/></barline>"));
    EXPECT_EQ(names_of(tune.tune), (std::vector<std::string>{"A4", "E4"}));
    EXPECT_THAT(tune.remarks,
                testing::UnorderedElementsAre(HasSubstr("voice 2"), HasSubstr("highest"), HasSubstr("Grace"),
                                              HasSubstr("Repeats"), HasSubstr("60 quarter notes")));
    EXPECT_EQ(names_of(read_musicxml(*tune.document, "test", {.name = "", .voice = "2"}).tune),
              (std::vector<std::string>{"D3"}));
}

/// expects  a part for an instrument in B flat to sound a tone lower, spelling kept
TEST(MusicXmlTest, TransposingPartsSoundAsTheyShould) {
    const ReadTune tune =
        read(bar(1, attributes("<transpose><diatonic>-1</diatonic><chromatic>-2</chromatic></transpose>") +
                        note("F", 4, 2) + note("C", 4, 4)));
    EXPECT_EQ(names_of(tune.tune), (std::vector<std::string>{"Eb4", "Bb3"}));
    const ReadTune octave =
        read(bar(1, attributes("<transpose><chromatic>0</chromatic><octave-change>-1</octave-change></transpose>") +
                        note("G", 4, 6)));
    EXPECT_EQ(names_of(octave.tune), (std::vector<std::string>{"G3"}));
}

TEST(MusicXmlTest, MetronomeMarksCountInTheirOwnUnit) {
    const ReadTune tune =
        read(bar(1, attributes() +
                        "<direction><direction-type><metronome><beat-unit>quarter</beat-unit><beat-unit-dot/>"
                        "<per-minute>60</per-minute></metronome></direction-type></direction>" +
                        note("D", 4, 6)));
    EXPECT_DOUBLE_EQ(tune.tune.tempos[0].quarters_a_minute, 90.0);
}

TEST(MusicXmlTest, FingersAndStringsOfTheScoreAreKept) {
    const std::string technical =
        "<notations><technical><fingering>2</fingering><string>3</string></technical></notations>";
    const ReadTune tune =
        read(bar(1, attributes() + note("D", 4, 2, technical) +
                        note("A", 4, 4, "<notations><technical><open-string/></technical></notations>")));
    EXPECT_EQ(tune.tune.notes[0].finger, 2);
    EXPECT_EQ(tune.tune.notes[0].string, "3");
    EXPECT_EQ(tune.tune.notes[1].finger, 0);
}

/// expects  the same tune whether its parts stand in bars or its bars in parts
TEST(MusicXmlTest, ScoresByBarsAreRead) {
    const std::string text =
        "<score-timewise><part-list><score-part id=\"A\"><part-name>One</part-name></score-part>"
        "<score-part id=\"B\"><part-name>Two</part-name></score-part></part-list>"
        "<measure number=\"1\"><part id=\"A\">" +
        attributes() + note("D", 4, 6) + "</part><part id=\"B\">" + attributes() + note("G", 3, 6) +
        "</part></measure></score-timewise>";
    const ReadTune first = read_musicxml(text, "test");
    EXPECT_EQ(names_of(first.tune), (std::vector<std::string>{"D4"}));
    EXPECT_THAT(first.remarks, testing::Contains(HasSubstr("One (A)")));
    EXPECT_EQ(names_of(read_musicxml(text, "test", {.name = "Two", .voice = ""}).tune),
              (std::vector<std::string>{"G3"}));
}

/// expects  everything of the document to stand as it stood, with only the marks added
TEST(MusicXmlTest, WritingBackAddsAndLosesNothing) {
    const std::string rest =
        "<!-- mine --><?keep this?><part-list><score-part id=\"P1\"><part-name>A &amp; "
        "B</part-name></score-part></part-list>";
    const std::string lyric = "<lyric><text>la</text></lyric>";
    const std::string text = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<score-partwise version=\"3.1\">\n  " + rest +
                             "\n  <part id=\"P1\">" + bar(1, attributes() + note("D", 4, 2, lyric) + note("E", 4, 4)) +
                             "</part>\n</score-partwise>\n";
    const ReadTune tune = read_musicxml(text, "test");
    const std::vector<NoteMarks> marks{{.finger = 1, .string = 2, .words = "hand at fret 2"},
                                       {.finger = 0, .string = 1, .words = ""}};
    std::string expected = text;
    const auto put_before = [&](const std::string& mark, const std::string& added) {
        expected.insert(expected.find(mark), added);
    };
    put_before(
        "<note><pitch><step>D",
        "<direction placement=\"above\"><direction-type><words>hand at fret 2</words></direction-type></direction>");
    put_before(lyric, "<notations><technical><fingering>1</fingering><string>2</string></technical></notations>");
    put_before("</note></measure>", "<notations><technical><open-string/><string>1</string></technical></notations>");
    EXPECT_EQ(fingered_musicxml(tune, marks), expected);
}

/// expects  marks written twice to stand there once, and to be read as the tune's own
TEST(MusicXmlTest, MarksAreReadBack) {
    const Tune tune = parse_tune("D4:1 E4:1/2 F4:3/2 G4:5", "test");
    std::vector<NoteMarks> marks;
    for (int i = 0; i < 4; ++i) marks.push_back({.finger = i, .string = 1 + i, .words = ""});
    const ReadTune once = read_musicxml(new_musicxml(tune, marks), "once");
    for (int i = 0; i < 4; ++i) {
        EXPECT_EQ(once.tune.notes[static_cast<std::size_t>(i)].finger, i);
        EXPECT_EQ(once.tune.notes[static_cast<std::size_t>(i)].string, std::to_string(1 + i));
    }
    const ReadTune twice = read_musicxml(fingered_musicxml(once, marks), "twice");
    EXPECT_EQ(twice.tune, once.tune);
}

/// expects  random tunes to come back from a new score as they were: thirds, fifths, sevenths, ties over bars, upbeats
/// margin   rounding to 1/5040 of a quarter note and back
TEST(MusicXmlTest, NewScoresKeepEveryNote) {
    std::mt19937 random(11);
    const auto pick = [&](auto... choices) {
        const std::array<const char*, sizeof...(choices)> all{choices...};
        return std::string(all[random() % all.size()]);
    };
    for (int k = 0; k < 100; ++k) {
        std::string words = "beats=" + pick("2/4", "3/4", "4/4", "6/8", "9/8", "3/2", "5/4") +
                            " upbeat=" + pick("0", "1", "1/2", "0.5").substr(0, 1) + " tempo=" + pick("60", "96") +
                            " dynamic=" + pick("p", "mf");
        for (int i = 0; i < 30; ++i)
            words += " " + pick("D4", "F#3", "Bb4", "C##5", "Ebb3", "G2", "r", "A5") + ":" +
                     pick("1", "1/2", "1/4", "3/2", "3/4", "2", "3", "4", "7", "1/3", "2/3", "1/5", "1/7", "1/8", "1/6",
                          "5");
        const Tune tune = parse_tune(words + " D4:1", "test");
        const ReadTune back = read_musicxml(new_musicxml(tune, std::vector<NoteMarks>(tune.notes.size())), "back");
        expect_same_notes(tune, back.tune, 1e-3);
        EXPECT_EQ(back.tune.tempos, tune.tempos);
    }
}

TEST(ScoreFilesTest, FilesOfTwoNotationLibrariesAreRead) {
    const std::filesystem::path folder = BOWBAND_TUNES;
    const ReadTune abc = read_tune((folder / "from_abc.musicxml").string());
    EXPECT_EQ(names_of(abc.tune), (std::vector<std::string>{"D4", "G4", "A4", "B4", "C5", "D5", "E5", "F5", "G5", "A5",
                                                            "G5", "F#5", "E5", "D5"}));
    EXPECT_DOUBLE_EQ(abc.tune.notes[9].duration, 3.0);
    EXPECT_EQ(abc.tune.notes[4].finger, 4);
    EXPECT_EQ(read_tune((folder / "from_abc.mxl").string()).tune, abc.tune);
    const ReadTune engraved = read_tune((folder / "from_engraver.musicxml").string());
    const Tune words = parse_tune(
        "beats=3/4 upbeat=1 dynamic=p tempo=72 D4:1 E4:1/3 F4 G4 A4:1/2 B4:3/2 r:1/5 C5:1/5 C5 D5:2/5 F#4:8 beats=6/8 "
        "G4:1/7 A4:6/7 B4:1/2 tempo=90 dynamic=f C5:5",
        "words");
    ASSERT_EQ(names_of(engraved.tune), names_of(words));
    for (std::size_t i = 0; i < words.notes.size(); ++i) {
        EXPECT_NEAR(engraved.tune.notes[i].start, words.notes[i].start, 1e-3) << i;  // it draws 1/7 as 0.14375
        EXPECT_EQ(engraved.tune.notes[i].dynamic, words.notes[i].dynamic) << i;
    }
    EXPECT_EQ(read_tune((folder / "from_engraver.mxl").string()).tune.notes, engraved.tune.notes);
}

TEST(ScoreFilesTest, MarksInThoseFilesKeepEveryNote) {
    for (const char* name : {"from_abc.musicxml", "from_abc.mxl", "from_engraver.musicxml", "from_engraver.mxl"}) {
        const ReadTune tune = read_tune((std::filesystem::path(BOWBAND_TUNES) / name).string());
        const std::vector<NoteMarks> marks(tune.tune.notes.size(),
                                           NoteMarks{.finger = 3, .string = 1, .words = "hand at fret 1"});
        expect_same_notes(tune.tune, read_musicxml(fingered_musicxml(tune, marks), name).tune, 1e-12);
    }
}

TEST(ScoreFilesTest, MidiOfThoseLibrariesIsRead) {
    const std::filesystem::path folder = BOWBAND_TUNES;
    const ReadTune abc = read_tune((folder / "from_abc.mid").string());
    const ReadTune score = read_tune((folder / "from_abc.musicxml").string());
    EXPECT_EQ(names_of(abc.tune), names_of(score.tune));
    EXPECT_NEAR(abc.tune.tempos[0].quarters_a_minute, 84.0, 1e-3);  // MIDI counts whole microseconds
    const ReadTune engraved = read_tune((folder / "from_engraver.mid").string());
    EXPECT_EQ(engraved.tune.notes.size(), 14U);
    EXPECT_EQ(engraved.tune.tempos.size(), 2U);
    EXPECT_EQ(engraved.tune.notes[1].bar, 2);  // its upbeat is a bar of its own
    EXPECT_EQ(engraved.tune.notes.back().dynamic, "f");
}

}  // namespace
